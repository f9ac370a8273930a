// Starts the Go program of this page, and says so in the page if it can't be started or ends.
//
// What the page and the Go program may rely on:
//   html[data-version]    the packed version, stamped into index.html
//   html[data-screen]     the screen that was left last, set by watch.js
//   html[data-ready]      "yes", set by the Go program when it can be used; taken away here if the program ends
//   html[data-offline]    "yes" once everything is kept for use without a network, "no" if it can't be; the event shed-answer
//                         {verb: "offline", text} on window says the same
//   html[data-update]     "waiting" when a newer version is kept whole and waits; the event shed-update on window says the same.
//                         "failed" when one was switched to and doesn't start here; shed-answer {verb: "fell-back"} says the same
//   event shed-switch     sent to window by the Go program when the builder wants the newer version now
//   shedReckonerPolicy    the page's one Trusted Types policy, undefined where the browser has none
"use strict";

(() => {
	const root = document.documentElement;

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

	let registration = null;

	// stop tells the builder that the page no longer works. Nobody is left to ask about a waiting version then, so it is
	// switched to: a reload must be able to bring the repaired page.
	function stop(reason) {
		shedStop(reason);
		switchWorker();
	}

	// fail is for a start that came to nothing.
	function fail(reason) {
		if (location.protocol.startsWith("http")) {
			shedRepair(reason);
		} else {
			stop(reason);
		}
	}

	// packedProgram gives the program as a stream of bytes: from this file if it is inside, else from beside the page.
	async function packedProgram() {
		const inside = document.getElementById("program");
		if (inside) {
			const bytes = Uint8Array.from(atob(inside.textContent), (c) => c.charCodeAt(0));
			inside.remove();
			return new Response(bytes).body;
		}
		const asked = fetch(root.dataset.program);
		lookUp();
		const response = await asked;
		if (!response.ok) {
			throw new Error("the server answered " + response.status);
		}
		return response.body;
	}

	// lookUp lets the browser read from disk, while the program is on its way, what the program asks for first of all and
	// would have to wait for: how it writes numbers, its time zone. A finger that scrolls comes between the two.
	function lookUp() {
		setTimeout(() => {
			void (1.5).toLocaleString();
			setTimeout(() => void new Date().getHours());
		});
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

	// seen waits until the frame with the cautions was painted: on a slow line the program's megabyte comes after it, not
	// beside what it is painted with. A page in the background isn't painted.
	function seen() {
		return new Promise((done) => {
			if (document.visibilityState === "hidden") {
				done();
			}
			requestAnimationFrame(() => setTimeout(done));
			setTimeout(done, 100);
		});
	}

	async function start() {
		if (!globalThis.WebAssembly || !WebAssembly.instantiateStreaming || !globalThis.DecompressionStream) {
			stop("This browser is too old for this page: it lacks WebAssembly or DecompressionStream. It takes a browser of 2023 or newer.");
			return;
		}
		const go = new Go();
		const kept = shedStore.read(); // while the program is on its way
		let program;
		await seen();
		try {
			const response = new Response(await unpacked(await packedProgram()),
				{ headers: { "Content-Type": "application/wasm" } });
			program = await WebAssembly.instantiateStreaming(response, go.importObject);
		} catch (error) {
			fail("The page could not be loaded (" + error.message + ").");
			return;
		}
		await kept;
		await new Promise((done) => setTimeout(done)); // a finger that scrolls comes between
		const ended = go.run(program.instance).then(() => end("."), (error) => end(" (" + error.message + ")."));
		await Promise.race([ready(), ended]);
		if (root.dataset.ready) {
			shedStarted();
		}
	}

	// frame names the screen that was left last while its own is on the way.
	function frame() {
		const tab = root.dataset.screen && document.querySelector(`.frame [data-screen="${root.dataset.screen}"]`);
		if (tab) {
			tab.setAttribute("aria-current", "page");
			document.getElementById("where").textContent = tab.textContent;
		}
	}

	// ready waits until the program can be used.
	function ready() {
		return new Promise((done) => {
			const look = () => { if (root.dataset.ready) { done(); } };
			new MutationObserver(look).observe(root, { attributeFilter: ["data-ready"] });
			look();
		});
	}

	function end(why) {
		if (root.dataset.ready) {
			stop("The page has stopped working" + why);
		} else {
			fail("The page could not be started" + why);
		}
	}

	// keepOffline registers the worker that keeps the page for use without a network, and says when a newer one waits.
	async function keepOffline() {
		if (!location.protocol.startsWith("http")) {
			tellOffline(true); // all of it is in one file
			return;
		}
		if (!navigator.serviceWorker) {
			tellOffline(false);
			return;
		}
		if (!root.dataset.ready && !await navigator.serviceWorker.getRegistration()) {
			return; // of a page that doesn't start nothing is kept: its worker would fail too, and one engine never gets over that
		}
		try {
			registration = await navigator.serviceWorker.register(policy ? policy.createScriptURL("sw.js") : "sw.js",
				{ updateViaCache: "none" });
		} catch (error) {
			registration = await navigator.serviceWorker.getRegistration(); // one of an earlier visit, if any
			console.warn("not asked for a newer version:", error.message);
		}
		if (!registration) {
			tellOffline(false);
			return;
		}
		window.addEventListener("shed-switch", switchAndReload);
		registration.addEventListener("updatefound", watchInstall);
		watchInstall();
		await Promise.all([tellActive(), tellWaiting()]);
	}

	function watchInstall() {
		if (registration.installing) {
			registration.installing.addEventListener("statechange", () => { tellActive(); tellWaiting(); });
		}
	}

	const patience = 60000; // ms: a worker may have to ask the network for all that it lacks

	// ask sends a worker a message and gives its answer.
	function ask(worker, type) {
		return new Promise((answered) => {
			const channel = new MessageChannel();
			channel.port1.onmessage = (event) => answered(event.data);
			setTimeout(answered, patience, false);
			worker.postMessage({ type: type, version: root.dataset.version }, [channel.port2]);
		});
	}

	async function tellActive() {
		const { installing, active } = registration;
		if (active) {
			if (root.dataset.ready && await ask(active, "started") === "older" && !root.dataset.update) {
				root.dataset.update = "failed";
				tell("fell-back", "");
			}
			tellOffline(await ask(active, "check"));
		} else if (!installing) {
			tellOffline(false);
		}
	}

	function tellOffline(isKept) {
		root.dataset.offline = isKept ? "yes" : "no";
		tell("offline", root.dataset.offline);
	}

	function tell(verb, text) {
		window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: verb, path: "", text: text } }));
	}

	async function tellWaiting() {
		const { waiting, active } = registration;
		if (!waiting || !active || !await ask(waiting, "check")) {
			return;
		}
		if (!root.dataset.ready) {
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

	// What didn't come whole isn't started. The worker comes second, so that its downloads don't slow the start. Without it the
	// page works, only not offline.
	frame();
	if (!root.dataset.missing) {
		start().finally(() => keepOffline().catch((error) => console.warn("not kept for offline use:", error.message)));
	}
})();
