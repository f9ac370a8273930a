// Does for the Go program what a browser answers with a promise only. The program asks with the event shed-ask on window,
// and is answered with shed-answer:
//   ask {kind: "copy", text}        answer {verb: "did-copy"}, or {verb: "copy-failed"}
//   ask {kind: "share", key, text}  none; the same as copy where the browser can't share
//   ask {kind: "pick"}              answer {verb: "import", text}, what stands in the file; none if no file is picked
"use strict";

(() => {
	const doers = { copy, share, pick };

	window.addEventListener("shed-ask", (event) => {
		const doer = doers[event.detail.kind];
		if (doer) {
			doer(event.detail).catch((error) => console.warn("could not " + event.detail.kind + ":", error.message));
		}
	});

	function answer(verb, text) {
		window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: verb, path: "", text: text || "" } }));
	}

	async function copy(ask) {
		let done = false;
		if (navigator.clipboard) {
			done = await navigator.clipboard.writeText(ask.text).then(() => true, () => false);
		}
		answer(done || copyOldWay(ask.text) ? "did-copy" : "copy-failed");
	}

	// copyOldWay works where the page isn't from a secure address, such as a file on a phone or a server in the shed.
	function copyOldWay(text) {
		const focused = document.activeElement;
		const field = document.createElement("textarea");
		field.value = text;
		field.readOnly = true; // or a keyboard would come up
		document.body.append(field);
		field.select();
		const done = document.execCommand("copy");
		field.remove();
		focused.focus();
		return done;
	}

	async function share(ask) {
		if (!navigator.share) {
			await copy(ask);
			return;
		}
		await navigator.share({ title: ask.key, text: ask.text }).catch((error) => {
			if (error.name !== "AbortError") { // the builder changed their mind
				throw error;
			}
		});
	}

	async function pick() {
		const left = document.getElementById("picked");
		if (left) {
			left.remove();
		}
		const field = document.createElement("input");
		field.id = "picked";
		field.type = "file";
		field.hidden = true;
		field.addEventListener("change", async () => {
			// No more than needed is read, should somebody pick a film: a job of 1 MB and a byte is refused as too large.
			const text = await field.files[0].slice(0, 2 << 20).text();
			field.remove();
			answer("import", text);
		});
		document.body.append(field);
		field.click();
	}
})();
