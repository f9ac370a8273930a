package view

import "shedreckoner/wasm/page"

func faultAnswer(s page.State, cup string) html { return nothing }
