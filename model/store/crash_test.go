package store

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

const crashVariable = "STORE_CRASH_FILE"

func TestMain(m *testing.M) {
	if path := os.Getenv(crashVariable); path != "" {
		saveForever(path)
	}
	os.Exit(m.Run())
}

// text is what the n-th save of the crash test writes: long, and wrong if cut.
func text(n int) string { return fmt.Sprintf("%d\n%s\n%d\n", n, strings.Repeat("x", 20_000), n) }

// saveForever saves one text after the other and says after each that it did.
func saveForever(path string) {
	f, data, err := Open(path)
	for err == nil {
		first, _, _ := strings.Cut(string(data), "\n")
		n, bad := strconv.Atoi(first)
		if bad != nil {
			os.Exit(3)
		}
		data = []byte(text(n + 1))
		if _, err = f.Save(data, Options{}); err == nil {
			fmt.Println(n + 1)
		}
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(3)
}

// A killed program leaves one of the two texts, never less than the last that it said
// was saved. A kill is no power cut: the order of flushes is tested elsewhere.
func TestKilledWhileSaving(t *testing.T) {
	kills := 40
	if testing.Short() {
		kills = 10
	}
	s := newShop(t, text(0))
	told := 0
	for range kills {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), crashVariable+"="+s.path, "XDG_STATE_HOME="+filepath.Dir(s.versions))
		out, err := cmd.StdoutPipe()
		require.NoError(t, err)
		require.NoError(t, cmd.Start())
		lines := bufio.NewScanner(out)
		for n := rand.IntN(8); n >= 0 && lines.Scan(); n-- {
			told, err = strconv.Atoi(lines.Text())
			require.NoError(t, err)
		}
		time.Sleep(time.Duration(rand.IntN(2000)) * time.Microsecond)
		require.NoError(t, cmd.Process.Kill())
		for lines.Scan() {
			if n, err := strconv.Atoi(lines.Text()); err == nil {
				told = n
			}
		}
		_ = cmd.Wait() // it was killed: that is its error
		first, _, _ := strings.Cut(s.content(), "\n")
		n, err := strconv.Atoi(first)
		require.NoError(t, err)
		require.Equal(t, text(n), s.content())
		require.Contains(t, []int{told, told + 1}, n)
	}
	require.Positive(t, told)
	_, err := s.open().Leftovers()
	require.NoError(t, err)
}
