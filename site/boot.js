// Starts the Go program of this page, and says so in the page if it can't be started or ends.
//
// What the page and the Go program may rely on:
//   html[data-version]    the packed version, stamped into index.html
//   html[data-ready]      "yes", set by the Go program when it can be used; taken away here if the program ends
//   html[data-offline]    "yes" once everything is kept for use without a network
//   html[data-update]     "waiting" when a newer version is kept and waits; the event shed-update on window says the same
//   event shed-switch     sent to window by the Go program when the builder wants the newer version now
//   shedReckonerPolicy    the page's one Trusted Types policy, undefined where the browser has none
"use strict";

(() => {
	const root = document.documentElement;
	const script = document.currentScript;

	// The policy is made here and not in Go because registering the worker needs it too, even if the program can't start.
	// createHTML passes everything on: the markup package escapes, and the border is the only user.
	const policy = globalThis.trustedTypes && trustedTypes.createPolicy("shed-reckoner", {
		createHTML: (markup) => markup,
		createScriptURL: (url) => {
			if (url !== "sw.js") {
				throw new TypeError("only sw.js may be a script address");
			}
			return url;
		},
	});
	globalThis.shedReckonerPolicy = policy;

	let ended = false;
	let registration = null;

	// stop tells the builder that the page no longer works. Nobody is left to ask about a waiting version then, so it is
	// switched to: a reload must be able to bring the mended page.
	function stop(reason) {
		ended = true;
		delete root.dataset.ready;
		const place = document.getElementById("stopped");
		place.hidden = false;
		place.textContent = reason + " Your saved job is safe on this device. Reload the page to go on." +
			" If a cup is mixed, go by your own clock and the maker's sheet.";
		switchWorker();
	}

	// packedProgram gives the program as a stream of bytes: from this file if it is inside, else from beside this script.
	async function packedProgram() {
		const inside = document.getElementById("program");
		if (inside) {
			const bytes = Uint8Array.from(atob(inside.textContent), (c) => c.charCodeAt(0));
			inside.remove();
			return new Response(bytes).body;
		}
		const asked = fetch(new URL("reckoner.wasm.gz", script.src));
		lookUp();
		const response = await asked;
		if (!response.ok) {
			throw new Error("the server answered " + response.status);
		}
		return response.body;
	}

	// lookUp lets the browser read from disk, while the program is on its way, what the program asks for first of all and
	// would have to wait for: its store, how it writes numbers, its time zone.
	function lookUp() {
		try {
			void localStorage.length;
		} catch (error) {
			// There is none; the program finds that out by itself, and tells.
		}
		void (1.5).toLocaleString();
		void new Date().getHours();
	}

	// unpacked undoes gzip if it is still on: a host may have taken it off on the way. The first byte tells: gzip begins
	// with 1f 8b, WebAssembly with 00 61 73 6d.
	async function unpacked(stream) {
		const [peeked, whole] = stream.tee();
		const reader = peeked.getReader();
		const first = await reader.read();
		reader.cancel();
		if (first.value && first.value[0] === 0x1f) {
			return whole.pipeThrough(new DecompressionStream("gzip"));
		}
		return whole;
	}

	async function start() {
		if (!globalThis.WebAssembly || !WebAssembly.instantiateStreaming || !globalThis.DecompressionStream) {
			stop("This browser is too old for this page: it lacks WebAssembly or DecompressionStream. It takes a browser of 2023 or newer.");
			return;
		}
		const go = new Go();
		let program;
		try {
			const response = new Response(await unpacked(await packedProgram()),
				{ headers: { "Content-Type": "application/wasm" } });
			program = await WebAssembly.instantiateStreaming(response, go.importObject);
		} catch (error) {
			stop("The page could not be loaded (" + error.message + ").");
			return;
		}
		go.run(program.instance).then(
			() => stop("The page has stopped working."),
			(error) => stop("The page has stopped working (" + error.message + ")."));
	}

	// keepOffline registers the worker that keeps the page for use without a network, and says when a newer one waits.
	async function keepOffline() {
		if (!location.protocol.startsWith("http") || !navigator.serviceWorker) {
			return;
		}
		navigator.serviceWorker.ready.then(() => { root.dataset.offline = "yes"; });
		registration = await navigator.serviceWorker.register(policy ? policy.createScriptURL("sw.js") : "sw.js",
			{ updateViaCache: "none" });
		window.addEventListener("shed-switch", switchAndReload);
		registration.addEventListener("updatefound", watchInstall);
		watchInstall();
		sayWaiting();
	}

	function watchInstall() {
		if (registration.installing) {
			registration.installing.addEventListener("statechange", sayWaiting);
		}
	}

	function sayWaiting() {
		if (!registration.waiting || !registration.active) {
			return;
		}
		if (ended) {
			switchWorker();
			return;
		}
		root.dataset.update = "waiting";
		window.dispatchEvent(new CustomEvent("shed-update"));
	}

	function switchWorker() {
		if (registration && registration.waiting) {
			registration.waiting.postMessage({ type: "switch" });
		}
	}

	// Only the page that asked reloads: another open page goes on with the version that it has loaded whole.
	function switchAndReload() {
		navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
		switchWorker();
	}

	// The worker comes second, so that its downloads don't slow the start. Without it the page works, only not offline.
	start().finally(() => keepOffline().catch((error) => console.warn("not kept for offline use:", error.message)));
})();
