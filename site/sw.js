// Keeps one whole version of the page for use without a network. All of a version is kept or nothing of it, and a page is
// answered from one version only: a loader and a program of two versions don't fit each other.
//
// A file is whole if its SHA-256 is that of what was packed; nothing else is kept, whatever a host sends under its name. What
// a page may send, each answered on the port that comes with it:
//   {type: "check"}            fills in what the set lacks, from the network; answer: whether the set is whole
//   {type: "switch"}           the same, and a whole set is then used from the next load on
//   {type: "started", version} a page of that version has started: the sets of other ones may go; answer: "this" version,
//                              the "older" one that answers since this one failed, or an "other" one
//   {type: "failed", version}  it hasn't: what isn't whole goes, and if all is whole the version before answers again
// All of it stands in one function: a worker that comes cut is no program.
"use strict";

(() => {
	const base = new URL("./", location);
	// Two copies of the page on one host keep apart by their paths.
	const prefix = "shed-reckoner-" + base.pathname.slice(1);
	const version = "{{.Version}}";
	const cacheName = prefix + "{{.Version}}";
	const files = { // the type to keep each with, and its SHA-256 as shipped and, of what a host may unpack, unpacked
{{- range .Files}}
		"{{.Address}}": { type: "{{.Type}}", sums: [{{range $i, $sum := .Sums}}{{if $i}}, {{end}}"{{$sum}}"{{end}}] },
{{- end}}
	};
	const failed = new URL("failed", base); // in a set: its page didn't start here

	self.addEventListener("install", (event) => {
		event.waitUntil(fill().then(async (state) => {
			if (state !== "whole") {
				await caches.delete(cacheName);
				throw new Error("this version didn't come whole");
			}
		}));
	});

	self.addEventListener("message", (event) => {
		const { type, version } = event.data || {};
		if (doers[type]) {
			event.waitUntil(doers[type](version).then((answer) => event.ports[0] && event.ports[0].postMessage(answer)));
		}
	});

	self.addEventListener("fetch", (event) => {
		const request = event.request;
		if (request.method === "GET" && new URL(request.url).origin === location.origin) {
			event.respondWith(answer(request));
		}
	});

	const doers = {
		check: async () => await fill() === "whole",

		// A new version waits until the builder wants it: never in the middle of a cup.
		switch: async () => {
			const whole = await fill() === "whole";
			if (whole) {
				self.skipWaiting();
			}
			return whole;
		},

		started: async (started) => {
			const cache = await caches.open(cacheName);
			if (started !== version) {
				return await cache.match(failed) ? "older" : "other";
			}
			await cache.delete(failed);
			await Promise.all((await otherSets()).map((name) => caches.delete(name)));
			return "this";
		},

		failed: async (started) => {
			if (started !== version) {
				await caches.delete(prefix + started); // the version before, answered in this one's place
				return;
			}
			switch (await fill()) {
			case "whole":
				await (await caches.open(cacheName)).put(failed, new Response(""));
				break;
			case "wrong":
				await caches.delete(cacheName); // the network answers then, with what fits together today
			}
		},
	};

	// fill makes the set whole. It says "whole"; "wrong" if the host sends something else; "away" if none answers.
	async function fill() {
		const cache = await caches.open(cacheName);
		const states = await Promise.all(Object.keys(files).map((file) => keepWhole(cache, file)));
		return ["wrong", "away"].find((state) => states.includes(state)) || "whole";
	}

	async function keepWhole(cache, file) {
		const address = new URL(file, base);
		const kept = await cache.match(address);
		if (kept && await isWhole(file, await kept.arrayBuffer())) {
			return "whole";
		}
		if (kept) {
			await cache.delete(address);
		}
		// First asks the server whether what the browser holds is still right, then past what the browser holds.
		for (const mode of ["no-cache", "reload"]) {
			let bytes = null;
			try {
				const response = await fetch(new Request(address, { cache: mode }));
				bytes = response.ok && await response.arrayBuffer();
			} catch (error) {
				return "away";
			}
			if (bytes && await isWhole(file, bytes)) {
				await cache.put(address, plain(file, bytes));
				return "whole";
			}
		}
		return "wrong";
	}

	async function isWhole(file, bytes) {
		const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
		return files[file].sums.includes(Array.from(sum, (byte) => byte.toString(16).padStart(2, "0")).join(""));
	}

	// plain is an answer without what a host said of it: a redirected one can't answer for a page, and a wrong type would be
	// kept for ever.
	function plain(file, bytes) {
		return new Response(bytes, { headers: {
			"Content-Type": files[file].type,
			"Content-Security-Policy": "frame-ancestors 'none'", // the rest of the policy stands in the page
			"X-Content-Type-Options": "nosniff",
		} });
	}

	// otherSets are those of other versions of this copy of the page. Other pages on the same host have caches too.
	async function otherSets() {
		return (await caches.keys()).filter((name) => name !== cacheName && name.startsWith(prefix) &&
			/^[0-9a-f]{12}$/.test(name.slice(prefix.length)));
	}

	async function answer(request) {
		const address = new URL(request.url);
		address.pathname = address.pathname.replace(/\/index\.html$/, "/");
		const own = await caches.open(cacheName);
		const kept = await find(own, address);
		if (kept && !(request.mode === "navigate" && await own.match(failed))) {
			return kept;
		}
		for (const name of await otherSets()) { // of the version before, which may still be open or answer again
			const older = await find(await caches.open(name), address);
			if (older) {
				return older;
			}
		}
		return fetch(request).catch((error) => {
			if (kept) {
				return kept;
			}
			throw error;
		});
	}

	// What a link carries behind "?" and what a host says in Vary make no difference to a file.
	function find(cache, address) {
		return cache.match(address, { ignoreSearch: true, ignoreVary: true });
	}
})();
