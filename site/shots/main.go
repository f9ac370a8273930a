// Command shots photographs every screen of the made-up job, and every sheet that can be opened from one, in both engines:
// for comparing a change of looks. What is longer than the window takes several pictures.
package main

import (
	"context"
	"flag"
	"fmt"
	"log"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

func main() {
	log.SetFlags(0)
	out := flag.String("out", "build/shots", "folder to write into, emptied first")
	sizes := flag.String("sizes", "360x740,1280x800", "windows, width by height in CSS pixels")
	looks := flag.String("looks", "light,dark", "looks: light, dark, or contrast, the reader's own colours, which only Chromium can be given")
	engines := flag.String("engines", "Chromium,WebKit", "engines")
	only := flag.String("only", "", "regular expression for the names of the pictures, such as ^cup")
	few := flag.Bool("few", false, "with few colours: small files, such as README's in site/pictures")
	flag.Parse()
	wanted, err := regexp.Compile(*only)
	if err == nil {
		err = shoot(context.Background(), *out, strings.Split(*engines, ","), strings.Split(*sizes, ","), strings.Split(*looks, ","), wanted, *few)
	}
	if err != nil {
		log.Fatal(err)
	}
}

// contrast is the look with the reader's own colours.
const contrast = "contrast"

// shoot photographs the page in each engine, size and look, a folder for each.
func shoot(ctx context.Context, out string, engines, sizes, looks []string, wanted *regexp.Regexp, few bool) error {
	served, err := pack.Serve(ctx, pack.Program, "127.0.0.1:0")
	if err != nil {
		return err
	}
	defer served.Close()
	if err := os.RemoveAll(out); err != nil {
		return err
	}
	for _, engine := range webdriver.Engines() {
		if !contains(engines, engine.Name) {
			continue
		}
		if len(engine.Missing) > 0 {
			fmt.Printf("NOT PHOTOGRAPHED in %s: this machine lacks %s\n", engine.Name, strings.Join(engine.Missing, ", "))
			continue
		}
		driver, err := webdriver.Start(ctx, engine)
		if err != nil {
			return err
		}
		defer driver.Close()
		for _, size := range sizes {
			for _, look := range looks {
				if look == contrast && engine.Name != "Chromium" {
					fmt.Printf("NOT PHOTOGRAPHED in %s: it can't be given the reader's own colours\n", engine.Name)
					continue
				}
				folder := filepath.Join(out, strings.ToLower(engine.Name)+"-"+size+"-"+look)
				n, err := album(driver, served.URL, size, look, folder, wanted, few)
				if err != nil {
					return fmt.Errorf("%s: %w", folder, err)
				}
				fmt.Printf("%s: %d pictures\n", folder, n)
			}
		}
	}
	return nil
}

func contains(names []string, name string) bool {
	for _, n := range names {
		if strings.EqualFold(n, name) {
			return true
		}
	}
	return false
}

// album photographs everything in one window, and counts the pictures.
func album(driver *webdriver.Driver, url, size, look, folder string, wanted *regexp.Regexp, few bool) (pictures int, err error) {
	var width, height int
	if _, err := fmt.Sscanf(size, "%dx%d", &width, &height); err != nil {
		return 0, fmt.Errorf("a size is such as 360x740, not %q", size)
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return 0, err
	}
	err = webdriver.Run(func(t webdriver.Failer) error {
		s := driver.Session(t)
		defer s.Quit()
		s.SetSize(width, height)
		if look == contrast {
			s.CDP(nil, "Emulation.setEmulatedMedia", map[string]any{"features": []any{map[string]any{"name": "forced-colors", "value": "active"}}})
		}
		s.Open(url)
		s.Wait(`html[data-ready="yes"]`)
		s.Script(nil, `Element.prototype.animate = undefined`) // nothing is photographed halfway into sight
		w := walk{s: s, look: look, seen: map[string]bool{}}
		w.picture = func(name string, png []byte) error {
			pictures++
			if few {
				var err error
				if png, err = small(png); err != nil {
					return err
				}
			}
			return os.WriteFile(filepath.Join(folder, name+".png"), png, 0o644)
		}
		w.wanted = wanted.MatchString
		return w.everything()
	})
	return pictures, err
}
