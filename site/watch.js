// Stands inside the page, before all other scripts, and can't be missing: it tells if one of them doesn't come as it was
// packed, repairs what the page was started from, and holds the sentence that is shown when the page has stopped.
//   shedStop(reason)     says that the page no longer works
//   shedRepair(reason)   drops what this start was made from, asks the network again and loads the page anew; the second time
//                        in a row it says the reason instead, since a host that stays wrong would have it reload forever
//   shedStarted()        ends that row
// It also tells the style which screen was left last, html[data-screen], so that the first that is painted is that screen's
// frame with the cautions. No figure stands in it: none is older than what was typed.
"use strict";

(() => {
	const root = document.documentElement;
	const tried = "shedreckoner.repaired"; // kept for this tab only
	const patience = 30000; // ms for the worker to ask the network for all it lacks
	const missing = [];

	try {
		const view = localStorage.getItem("shedreckoner.view") || "";
		for (const [, screen] of view.matchAll(/^screen = ([a-z]+)$/gm)) {
			root.dataset.screen = screen;
		}
	} catch (error) {
		// nothing can be read: it is as on a first visit
	}

	globalThis.shedStop = (reason) => {
		delete root.dataset.ready;
		const place = document.getElementById("stopped");
		place.hidden = false;
		place.textContent = reason + " Your saved job is safe on this device. Reload the page to go on." +
			" If a cup is mixed, go by your own clock and the maker's sheet.";
		const starting = document.getElementById("starting");
		if (starting) {
			starting.hidden = true; // it speaks of an old browser
		}
	};

	globalThis.shedRepair = async (reason) => {
		if (isSecond()) {
			shedStop(reason);
			return;
		}
		const worker = navigator.serviceWorker && navigator.serviceWorker.controller;
		await (worker ? asked(worker) : askedHere());
		location.reload();
	};

	globalThis.shedStarted = () => {
		try {
			sessionStorage.removeItem(tried);
		} catch (error) {
			// then nothing was noted there
		}
	};

	function isSecond() {
		try {
			if (sessionStorage.getItem(tried)) {
				sessionStorage.removeItem(tried);
				return true;
			}
			sessionStorage.setItem(tried, "yes");
			return false;
		} catch (error) {
			return true; // nothing is known of a first time
		}
	}

	// asked has the worker hold what it keeps against what was packed.
	function asked(worker) {
		return new Promise((done) => {
			const channel = new MessageChannel();
			channel.port1.onmessage = done;
			setTimeout(done, patience);
			worker.postMessage({ type: "failed", version: root.dataset.version }, [channel.port2]);
		});
	}

	// askedHere takes the page's files past what the browser itself has kept of them.
	function askedHere() {
		const files = [...document.querySelectorAll("script[src], link[rel=stylesheet]")].map((file) => file.src || file.href);
		return Promise.all([...files, root.dataset.program].map((file) =>
			fetch(file, { cache: "reload" }).then((response) => response.arrayBuffer()).catch(() => {})));
	}

	// said is what became of a script or the style.
	async function said(file) {
		const name = file.replace(/.*\//, "");
		try {
			const response = await fetch(file);
			const type = response.headers.get("Content-Type") || "nothing";
			if (!response.ok) {
				return name + " is missing there (" + response.status + ")";
			}
			if (!/javascript|css/.test(type)) {
				return name + " came as " + type.replace(/;.*/, "");
			}
			return name + " came cut or changed";
		} catch (error) {
			return name + " didn't come: no network";
		}
	}

	addEventListener("error", (event) => {
		const file = event.target.src || event.target.href;
		if (file && event.target.integrity) {
			missing.push(file);
			root.dataset.missing = missing.length; // boot.js doesn't start what isn't whole
		}
	}, true);

	// All scripts have run by then, or failed.
	document.addEventListener("DOMContentLoaded", async () => {
		if (missing.length > 0) {
			const told = await Promise.all(missing.map(said));
			shedRepair("The host didn't send this page whole: " + told.join("; ") + ".");
		}
	});
})();
