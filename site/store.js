// Keeps what the program keeps in two places: the browser's quick store, which a browser that is killed may lose the last
// seconds of, and beside it a database that writes through to the disk. A browser may refuse either, at any moment.
//   shedStore.read()          a promise, which never fails, of nothing; from then on
//   shedStore.quick           what the quick store held, by key; null where it can't be read
//   shedStore.durable         the same of the database
//   shedStore.put(key, text)  keeps a text in both; reports whether the quick store took it
//   shedStore.drop(key)       drops it from both
//   shedStore.settle()        sends the event shed-settled to window once all that went before is on the disk, or can't be
"use strict";

globalThis.shedStore = (() => {
	const prefix = "shedreckoner.";
	const mark = prefix + "durable"; // in the quick store: a database stands beside it
	const reading = 10000; // ms: a phone that has much to do must not start as if nothing had been kept
	const settling = 3000; // ms, with a finger on the glass
	const store = { quick: null, durable: null, read, put, drop, settle };

	let database = null;
	let changes = new Map(); // that wait, by key: a text, or null to drop it
	let waits = false; // their turn to be written is still to come
	let writing = Promise.resolve(); // of the end of all turns so far

	async function read() {
		try {
			const held = {};
			for (let i = 0; i < localStorage.length; i++) {
				const key = localStorage.key(i);
				if (key.startsWith(prefix)) {
					held[key] = localStorage.getItem(key);
				}
			}
			store.quick = held;
		} catch (error) {
			// not even in part: what wasn't read must not be written over
		}
		try {
			const opened = await inTime(reading, open());
			store.durable = await inTime(reading, all(opened));
			database = opened; // one that comes too late isn't written to: nothing is known of what it holds
			localStorage.setItem(mark, "yes");
		} catch (error) {
			// no database, or no quick store to mark
		}
	}

	function inTime(ms, promise) {
		return Promise.race([promise, new Promise((done, failed) => setTimeout(failed, ms, new Error("too slow")))]);
	}

	function open() {
		return new Promise((done, failed) => {
			const request = indexedDB.open("shedreckoner", 1);
			request.onupgradeneeded = () => request.result.createObjectStore("kept");
			request.onsuccess = () => done(request.result);
			request.onerror = () => failed(request.error);
		});
	}

	function all(opened) {
		return new Promise((done, failed) => {
			const held = {};
			const looking = opened.transaction("kept");
			const cursor = looking.objectStore("kept").openCursor();
			cursor.onsuccess = () => {
				if (cursor.result) {
					held[cursor.result.key] = cursor.result.value;
					cursor.result.continue();
				}
			};
			looking.oncomplete = () => done(held);
			looking.onabort = () => failed(looking.error);
		});
	}

	function put(key, text) {
		let taken = false;
		try {
			if (store.quick) {
				localStorage.setItem(key, text);
				taken = true;
			}
		} catch (error) {
			// full, or broken
		}
		if (taken || !key.startsWith(prefix + "aside.")) { // what isn't set aside in both stays where it is in both
			change(key, text);
		}
		return taken;
	}

	function drop(key) {
		change(key, null);
		try {
			localStorage.removeItem(key);
		} catch (error) {
			try {
				localStorage.setItem(key, "");
			} catch (again) {
				// then the database alone knows
			}
		}
	}

	// change notes a change for the database. What changes together is written together.
	function change(key, text) {
		changes.set(key, text);
		if (database && !waits) {
			waits = true;
			writing = writing.then(write);
		}
	}

	async function write() {
		const now = changes;
		changes = new Map();
		waits = false;
		try {
			await written(now);
		} catch (error) {
			console.info("not kept on the disk:", error && error.message);
		}
	}

	function written(now) {
		return new Promise((done, failed) => {
			const change = database.transaction("kept", "readwrite", { durability: "strict" });
			change.oncomplete = done;
			change.onabort = () => failed(change.error);
			const kept = change.objectStore("kept");
			for (const [key, text] of now) {
				if (text === null) {
					kept.delete(key);
				} else {
					kept.put(text, key);
				}
			}
			if (change.commit) {
				change.commit();
			}
		});
	}

	async function settle() {
		try {
			await inTime(settling, writing);
		} catch (error) {
			// what there is has it
		}
		window.dispatchEvent(new CustomEvent("shed-settled"));
	}

	return store;
})();
