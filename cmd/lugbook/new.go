package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/store"
)

func (c *cli) newCommand() *cobra.Command {
	var from, title string
	cmd := &cobra.Command{
		Use:     "new FILE",
		Short:   "Start a job file, empty or from a worked cart",
		Long:    "Start a job file, empty or from a worked cart. It never writes over a file that is there. Carts:\n" + cartsHelp(),
		Example: "  lugbook new tug.yaml\n  lugbook new --from greenhouse-tug tug.yaml",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if from != "" && cmd.Flags().Changed("title") {
				return errors.New("--title is for an empty job; a worked cart has its own: give --from or --title")
			}
			data, err := freshJob(from, title)
			if err != nil {
				return err
			}
			if args[0] == stdio {
				return c.write(stdio, data)
			}
			_, outcome, err := store.SaveAs(args[0], data, false)
			if err != nil {
				return err
			}
			warn(cmd.ErrOrStderr(), outcome)
			return nil
		},
	}
	cmd.Flags().StringVar(&from, "from", "", "worked cart to start from: "+strings.Join(cart.Names(), ", "))
	cmd.Flags().StringVar(&title, "title", newTitle, "title of an empty job")
	return cmd
}

// newTitle is the title of a job that nobody has named yet.
const newTitle = "new job"

func cartsHelp() string {
	var b strings.Builder
	for _, name := range cart.Names() {
		fmt.Fprintf(&b, "  %-18s %s\n", name, cart.About(name))
	}
	return b.String()
}

// freshJob is a worked cart's file, or an empty job with the zones that every cart has.
func freshJob(from, title string) ([]byte, error) {
	if from != "" {
		data, err := cart.Read(from)
		if err != nil {
			return nil, unknownName("cart", from, cart.Names(), "lugbook new --help")
		}
		return data, nil
	}
	var fresh *jobfile.Decoded
	return fresh.Encode(emptyJob(title))
}

// emptyJob is a job with the usual zones and an empty as-found sheet.
func emptyJob(title string) *model.Job {
	return &model.Job{
		Version: model.FileVersion, Title: title,
		Zones: []model.Zone{
			{ID: "tray", Name: "pack tray"}, {ID: "rear", Name: "rear bay"}, {ID: "seat", Name: "under seat"},
			{ID: "dash", Name: "dash"}, {ID: "inlet", Name: "inlet"},
		},
		Sheets: []model.Sheet{{Name: model.AsFound}},
	}
}
