package view

import "shedreckoner/wasm/page"

func scheduleSection(s page.State) html { return nothing }
