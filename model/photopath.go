package model

import (
	"regexp"
	"strings"
)

var reservedName = regexp.MustCompile(`(?i)^(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9¹²³])(\..*)?$`)

// relativePath reports whether a path stays below the job file's folder on every
// system: at most 200 bytes and 8 parts, / only, nothing that a file system reserves, and no
// comma, which parts the paths of a list.
func relativePath(p string) bool {
	parts := strings.Split(p, "/")
	if p == "" || len(p) > 200 || len(parts) > 8 {
		return false
	}
	for _, part := range parts {
		if part == "" || part == "." || part == ".." || strings.HasSuffix(part, ".") ||
			strings.HasSuffix(part, " ") || strings.ContainsAny(part, `\:<>"|?*,`) || reservedName.MatchString(part) {
			return false
		}
	}
	return !strings.ContainsFunc(p, func(r rune) bool { return r < 0x20 || r == 0x7f })
}
