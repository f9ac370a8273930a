package page

import (
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/surface"
	"shedreckoner/wasm/words"
)

// fresh fills in what a new item starts with: what the builder would most
// likely choose, in the open, as if it had been typed.
func fresh(doc job.Document, list, item, text string) job.Document {
	_, id := job.Split(item)
	switch {
	case list == "surface":
		doc = freshSurface(doc, item, text)
	case list == "buildup":
		doc = readyFor(doc.Set(item+".name", "Build-up "+id), item, text)
		if len(doc.Items("buildup")) == 1 { // the first one is for all that is measured so far
			for _, s := range doc.Items("surface") {
				if at := "surface." + s; doc.Get(at+".buildup") == "" {
					doc = grounded(doc.Set(at+".buildup", item), at)
				}
			}
		}
	case isStepList(list):
		doc = freshStep(doc.Set(item+".kind", text), item, text)
	case list == "putty":
		doc = freshPutty(doc, item)
	case list == "card":
		doc = freshCard(doc, item, "card."+text)
	}
	return doc
}

// freshSurface starts a surface of a shape. It gets what the one before gets and
// lies as that does; the first is on the ground of the only build-up.
func freshSurface(doc job.Document, item, shape string) job.Document {
	doc = named(doc, item)
	if surface.Find(shape) != nil {
		doc = shaped(doc.Set(item+".shape", shape), item)
	}
	if ids := doc.Items("surface"); len(ids) > 1 {
		return alike(doc, "surface."+ids[len(ids)-2], item)
	}
	if builds := doc.Items("buildup"); len(builds) == 1 {
		doc = grounded(doc.Set(item+".buildup", "buildup."+builds[0]), item)
	}
	return doc
}

// freshCard starts a card as a copy of another, with the builder's figures on it.
// What is in stock of the other, and the patch that cured of it, stay with it.
func freshCard(doc job.Document, item, other string) job.Document {
	_, base := job.Split(other)
	for _, line := range doc.Under(other) {
		key := strings.TrimPrefix(line.Path, other)
		switch key {
		case ".base":
			base = line.Text
		case ".name":
			doc = doc.Set(item+key, line.Text+" (copy)")
		case ".stock", ".counted", ".patch":
		default:
			doc = doc.Set(item+key, line.Text)
		}
	}
	return doc.Set(item+".base", base)
}

// freshStep fills in how a kind of step is mostly done.
func freshStep(doc job.Document, item, kind string) job.Document {
	for _, l := range plan.KindOf(job.FindStepKind(kind)).Fresh {
		doc = doc.Set(item+"."+l.Path, l.Text)
	}
	return doc
}

func isStepList(list string) bool {
	under, last := job.Split(list)
	return last == "step" && under != ""
}

// freshPutty starts a putty with the parts that most have.
func freshPutty(doc job.Document, item string) job.Document {
	_, id := job.Split(item)
	doc = doc.Set(item+".name", words.PuttyNumber(id))
	for _, what := range []string{"resin", "hardener", "balloons"} {
		var part string
		doc, part = doc.Add(item + ".part")
		doc = doc.Set(part+".what", what)
	}
	return doc
}
