// Keeps what the program keeps in two places: the browser's quick store, which a browser that is killed may lose the last
// seconds of, and beside it a database that writes through to the disk. A browser may refuse either, at any moment, or be slow.
//   shedStore.read()          a promise, which never fails, of nothing; after ten seconds at the latest
//   shedStore.quick           what the quick store held then, by key; null where it can't be read
//   shedStore.durable         what the database held, the same way; null while that isn't known. Where it comes after all once
//                             read has ended, the event shed-late is sent to window
//   shedStore.use()           the program has looked at durable, and has put and dropped what it makes of it: what waits for
//                             the database is written to it, now and from then on; nothing while there is none
//   shedStore.put(key, text)  keeps a text in both; reports whether the quick store took it
//   shedStore.drop(key)       drops it from both
//   shedStore.settle()        sends the event shed-settled to window once all that went before is on the disk, with detail
//                             true; with false where that can't be, or takes too long. If the disk has it later, shed-answer
//                             {verb: "settled"} says so
"use strict";

globalThis.shedStore = (() => {
	const prefix = "shedreckoner.";
	// In the quick store: "yes" where a database stands beside it, "alone" where it went on without one that may yet come:
	// then only one of the two knows the latest.
	const mark = prefix + "durable";
	const reading = 10000; // ms: a phone that has much to do must not start as if nothing had been kept
	const settling = 3000; // ms, with a finger on the glass
	const again = 100, seldom = 60000; // ms, until what failed is tried again: each time later
	const store = { quick: null, durable: null, read, use, put, drop, settle };

	let opened = null; // the database; written to from use on
	let inUse = false;
	let isWriting = false;
	let isMarked = false;
	let changes = new Map(); // that wait, by key: a text, or null to drop it
	let noted = 0, kept = 0; // how many changes there were, and how many of them the disk has
	let waiting = []; // for the disk
	let owed = 0; // the change that the program was told the disk hasn't yet

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
		const looking = look();
		try {
			await inTime(reading, looking);
		} catch (error) {
			if (error === tooSlow || store.quick && store.quick[mark]) {
				note("alone");
			}
			comeLate(looking);
		}
	}

	// comeLate waits for a database that was too slow or failed, for as long as it takes.
	async function comeLate(looking) {
		for (let pause = again; !store.durable; pause = later(pause)) {
			try {
				await looking;
			} catch (error) {
				await sleep(pause);
				looking = look();
			}
		}
		window.dispatchEvent(new CustomEvent("shed-late"));
	}

	// look opens the database and reads it.
	async function look() {
		const found = await open();
		try {
			store.durable = await all(found);
		} catch (error) {
			found.close();
			throw error;
		}
		opened = found;
	}

	const tooSlow = new Error("too slow");

	function inTime(ms, promise) {
		return Promise.race([promise, new Promise((done, failed) => setTimeout(failed, ms, tooSlow))]);
	}

	function sleep(ms) {
		return new Promise((done) => setTimeout(done, ms));
	}

	function later(pause) {
		return Math.min(4 * pause, seldom);
	}

	function note(text) {
		try {
			localStorage.setItem(mark, text);
		} catch (error) {
			// no quick store to mark
		}
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

	function use() {
		if (opened) {
			inUse = true;
			write();
		}
	}

	// change notes a change for the database. What changes together is written together.
	function change(key, text) {
		changes.set(key, text);
		noted++;
		write();
	}

	// write writes what waits, until all of it is written.
	async function write() {
		if (!inUse || isWriting) {
			return;
		}
		isWriting = true;
		await null; // what changes with it comes first
		for (let pause = again; changes.size;) {
			const now = changes, upTo = noted;
			changes = new Map();
			try {
				await written(now);
				reached(upTo);
				pause = again;
			} catch (error) {
				console.info("not kept on the disk yet:", error && error.message);
				changes = new Map([...now, ...changes]);
				await sleep(pause);
				pause = later(pause);
				await reopen();
			}
		}
		isWriting = false;
	}

	// reopen takes another connection: one that a browser has lost fails for ever.
	async function reopen() {
		try {
			opened.close();
			opened = await inTime(reading, open());
		} catch (error) {
			// the next try finds that out
		}
	}

	// reached tells whoever waits for it that the disk has all changes up to one.
	function reached(upTo) {
		kept = upTo;
		if (!isMarked) {
			isMarked = true;
			note("yes");
		}
		waiting.filter((w) => w.until <= kept).forEach((w) => w.done());
		waiting = waiting.filter((w) => w.until > kept);
		if (owed && owed <= kept) {
			owed = 0;
			window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: "settled", path: "", text: "" } }));
		}
	}

	function written(now) {
		return new Promise((done, failed) => {
			const change = opened.transaction("kept", "readwrite", { durability: "strict" });
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
		const until = noted;
		let isKept = inUse;
		if (inUse && kept < until) {
			try {
				await inTime(settling, new Promise((done) => waiting.push({ until: until, done: done })));
			} catch (error) {
				isKept = false;
			}
		}
		if (!isKept) {
			owed = until;
		}
		window.dispatchEvent(new CustomEvent("shed-settled", { detail: isKept }));
	}

	return store;
})();
