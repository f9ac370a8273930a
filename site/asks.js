// Does for the Go program what a browser answers with a promise only. The program asks with the event shed-ask on window,
// and is answered with shed-answer:
//   ask {kind: "copy", text}        answer {verb: "did-copy"}, or {verb: "copy-failed"}
//   ask {kind: "share", key, text}  none; the same as copy where the browser can't share
//   ask {kind: "say", key, text}    reads the text out: at once, or with key "settled" after a while in which nothing else is
//                                   to be said; either way what was said before is taken back at once; none
//   ask {kind: "pick"}              answer {verb: "import", text}, what stands in the file; none if no file is picked
//   ask {kind: "timer", key}        "on": answer {verb: "tick"} every second; "off", and before any ask: every minute;
//                                   either way at once when the page is shown again
//   ask {kind: "awake", key}        "on": the screen is kept awake where the phone lets a page do so: answer {verb: "awake"};
//                                   where it doesn't, or no longer: {verb: "may-sleep"}. "off": none
//   ask {kind: "sound", key}        sounds the alarm of stage "1" or "2"; none. Unasked: answer {verb: "audible"} once the
//                                   browser lets the page sound, {verb: "mute"} when it no longer does
//   ask {kind: "persist"}           the browser is asked to keep what the page has stored; none
//   ask {kind: "vibrate", key}      vibrates for the stage; none
"use strict";

(() => {
	const doers = { say, copy, share, pick, timer, awake, sound, vibrate, persist };

	window.addEventListener("shed-ask", (event) => {
		const doer = doers[event.detail.kind];
		if (doer) {
			doer(event.detail).catch((error) => console.warn("could not " + event.detail.kind + ":", error.message));
		}
	});

	function answer(verb, text) {
		window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: verb, path: "", text: text || "" } }));
	}

	const tick = () => answer("tick");
	let ticking = setInterval(tick, 60000); // readings grow old while nobody touches the page
	let wakeLock = null;
	let wantsAwake = false;
	let speaker = null;

	const settled = 1500; // ms: longer than the pause between two keys
	let saying = 0;

	// A dose that no longer holds must not be read out, nor stand to be read.
	async function say(ask) {
		const live = document.getElementById("live");
		clearTimeout(saying);
		live.textContent = ask.key === "settled" ? "" : ask.text;
		if (ask.key === "settled" && ask.text) {
			saying = setTimeout(() => { live.textContent = ask.text; }, settled);
		}
	}

	async function timer(ask) {
		clearInterval(ticking);
		ticking = setInterval(tick, ask.key === "on" ? 1000 : 60000);
		if (ask.key === "on") {
			setTimeout(tick, 0); // an end that passed while nobody looked alarms at once
		}
	}

	async function awake(ask) {
		wantsAwake = ask.key === "on";
		if (wantsAwake && !wakeLock && !document.hidden) {
			try {
				wakeLock = await navigator.wakeLock.request("screen"); // fails too where the browser has none
				wakeLock.addEventListener("release", letGo);
				answer("awake");
			} catch {
				answer("may-sleep");
			}
		}
		if (!wantsAwake && wakeLock) {
			await wakeLock.release();
		}
	}

	// A phone takes the lock back when its battery runs low, say.
	function letGo() {
		wakeLock = null;
		if (wantsAwake && !document.hidden) {
			answer("may-sleep");
		}
	}

	// A hidden page sleeps and loses its wake lock; shown again it tells the time at once.
	document.addEventListener("visibilitychange", () => {
		if (!document.hidden) {
			tick();
			awake({ key: wantsAwake ? "on" : "off" }).catch(() => {});
		}
	});

	// A browser lets a page sound only after a touch or a key: each one makes the speaker ready, until it is. A phone may take
	// it away again, for a call. What is told changes the page: not between a finger's coming and its click.
	for (const kind of ["click", "keyup"]) {
		window.addEventListener(kind, (event) => {
			if (event.isTrusted && (!navigator.userActivation || navigator.userActivation.isActive)) {
				wakeSpeaker().catch(() => {});
			}
		});
	}

	async function wakeSpeaker() {
		if (!speaker && globalThis.AudioContext) {
			speaker = new AudioContext();
			speaker.onstatechange = () => answer(speaker.state === "running" ? "audible" : "mute");
		}
		if (speaker && speaker.state !== "running") {
			await speaker.resume();
		}
	}

	async function sound(ask) {
		if (!speaker) {
			return;
		}
		await speaker.resume();
		const beeps = ask.key === "2" ? 8 : 3;
		for (let i = 0; i < beeps; i++) {
			const tone = speaker.createOscillator();
			tone.frequency.value = ask.key === "2" ? 990 : 660;
			tone.connect(speaker.destination);
			tone.start(speaker.currentTime + i * 0.4);
			tone.stop(speaker.currentTime + i * 0.4 + 0.2);
		}
	}

	async function persist() {
		if (navigator.storage && navigator.storage.persist) {
			await navigator.storage.persist();
		}
	}

	async function vibrate(ask) {
		if (navigator.vibrate) {
			navigator.vibrate(ask.key === "2" ? [400, 200, 400, 200, 400] : [200, 200, 200]);
		}
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
