// Keeps one whole version of the page for use without a network. All of a version is kept or nothing of it, and a page is
// answered from one version only: a loader and a program of two versions don't fit each other.
"use strict";

const prefix = "shed-reckoner-";
const cacheName = prefix + "{{.Version}}";
const files = [{{range .Files}}
	"{{.}}",{{end}}
];

self.addEventListener("install", (event) => {
	event.waitUntil(caches.open(cacheName).then((cache) =>
		// no-cache: asks the server whether what the browser holds is still right.
		cache.addAll(files.map((file) => new Request(file, { cache: "no-cache" })))));
});

// Other pages on the same host have caches too: only our own are removed.
self.addEventListener("activate", (event) => {
	event.waitUntil(caches.keys().then((names) => Promise.all(names
		.filter((name) => name.startsWith(prefix) && name !== cacheName)
		.map((name) => caches.delete(name)))));
});

// A new version waits until the builder wants it: never in the middle of a cup.
self.addEventListener("message", (event) => {
	if (event.data && event.data.type === "switch") {
		self.skipWaiting();
	}
});

self.addEventListener("fetch", (event) => {
	const request = event.request;
	if (request.method === "GET" && new URL(request.url).origin === location.origin) {
		event.respondWith(answer(request));
	}
});

async function answer(request) {
	const address = new URL(request.url);
	address.pathname = address.pathname.replace(/\/index\.html$/, "/");
	const cache = await caches.open(cacheName);
	// What a link carries behind "?" and what a host says in Vary make no difference to a file.
	return await cache.match(address, { ignoreSearch: true, ignoreVary: true }) || fetch(request);
}
