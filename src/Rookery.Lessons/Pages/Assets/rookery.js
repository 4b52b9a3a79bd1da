// The player of recorded runs. It knows no scheduler: every picture and every sentence was computed before; it only
// chooses which one to show. Its data come as plain scripts that call rookery.receive, since a page that was opened by a
// double click may load nothing else from beside it.
"use strict";
window.rookery = (() => {
    const narrow = matchMedia("(max-width: 44rem)");
    const parts = new Map();
    const waiting = new Map();

    // --- Data ---------------------------------------------------------------------------------------------------

    function receive(id, part, data) {
        parts.set(id + "/" + part, data);
        for (const resolve of waiting.get(id + "/" + part) ?? []) resolve(data);
        waiting.delete(id + "/" + part);
    }

    function load(id, part, address) {
        const key = id + "/" + part;
        if (parts.has(key)) return Promise.resolve(parts.get(key));
        return new Promise((resolve, reject) => {
            const first = !waiting.has(key);
            waiting.set(key, [...(waiting.get(key) ?? []), resolve]);
            if (!first) return;
            const script = document.createElement("script");
            script.src = address;
            script.onerror = () => reject(new Error(address));
            document.head.append(script);
        });
    }

    // The lines of one picture. It is told from the one before it; every so many is told whole.
    function linesOf(table, index, cache) {
        let at = index - index % table.every;
        let lines = [];
        if (cache.table === table && cache.index >= at && cache.index <= index) {
            at = cache.index + 1;
            lines = cache.lines;
        }
        for (; at <= index; at++) {
            const next = [];
            let from = 0;
            const before = at % table.every === 0 ? [] : lines;
            for (const word of table.frames[at]) {
                if (typeof word === "string") {
                    from += Number(word);
                } else if (word < 0) {
                    for (let i = 0; i < -word; i++) next.push(before[from++]);
                } else {
                    next.push(word);
                }
            }
            lines = next;
        }
        Object.assign(cache, { table, index, lines });
        return lines;
    }

    // --- One player ---------------------------------------------------------------------------------------------

    function make(tag, properties, ...children) {
        const element = Object.assign(document.createElement(tag), properties);
        element.append(...children);
        return element;
    }

    function button(text, title, action, name = "") {
        return make("button", { type: "button", textContent: text, title, onclick: action, className: name });
    }

    class Player {
        constructor(root) {
            this.root = root;
            this.id = root.dataset.id;
            this.files = root.dataset.files;
            this.program = root.dataset.program ? document.getElementById(root.dataset.program) : null;
            this.stops = root.dataset.stops.split("|").filter(Boolean).map(text => {
                const blank = text.indexOf(" ");
                return { step: Number(text.slice(0, blank)), name: text.slice(blank + 1) };
            });
            this.cache = {};
            this.timer = 0;
            this.perSecond = 2;
        }

        async start() {
            this.talk = await load(this.id, "talk", this.files + ".js");
            this.last = this.talk.first + this.talk.said.length - 1;
            this.build();
            await this.go(this.stops.length ? this.stops[0].step : this.talk.first);
            this.root.hidden = false;
            this.root.closest(".rk-block").classList.add("rk-plays");
            narrow.addEventListener("change", () => this.go(this.at));
        }

        build() {
            this.stage = make("div", { className: "rk-stage", tabIndex: 0, role: "img" });
            this.stage.setAttribute("aria-label", this.talk.label ?? "The workers and their deques; the sentence below says what happened.");
            this.stage.setAttribute("aria-describedby", this.id + "-says");
            this.clock = make("span", { className: "rk-clock" });
            this.sentence = make("span", {});
            const says = make("p", { className: "rk-says", id: this.id + "-says" }, this.clock, this.sentence);
            says.setAttribute("aria-live", "polite");
            this.says = says;
            this.play = button("Play", "Space", () => this.toggle(), "rk-play");
            this.back = button("◀ Back", "Arrow left", () => this.step(-1));
            this.next = button("Next ▶", "Arrow right", () => this.step(1));
            this.scrub = make("input", { type: "range", min: this.talk.first, max: this.last, className: "rk-scrub",
                oninput: () => { this.pause(); this.go(Number(this.scrub.value)); } });
            this.scrub.setAttribute("aria-label", "Step");
            const speed = make("select", { title: "Steps in a second",
                onchange: () => { this.perSecond = Number(speed.value); if (this.timer) { this.pause(); this.toggle(); } } },
                ...[1, 2, 5, 10, 25].map(n => make("option", { value: n, textContent: n + " a second", selected: n === 2 })));
            speed.setAttribute("aria-label", "Speed");
            this.stopButtons = this.stops.map(stop =>
                button(stop.name, "Go to this moment", () => { this.pause(); this.go(stop.step); }, "rk-stop"));
            this.root.append(this.stage, says,
                make("div", { className: "rk-controls" }, this.play, this.back, this.next, this.scrub, speed,
                    make("span", { className: "rk-group" }, ...this.jumps()),
                    make("span", { className: "rk-group" }, ...this.stopButtons)),
                make("p", { className: "rk-keys",
                    textContent: "Keys: space plays, ← → step, Home and End, N and P to the next and the previous of the chosen kind." }));
            this.root.addEventListener("keydown", event => this.key(event));
            for (const figure of this.root.parentElement.querySelectorAll(".rk-moment")) {
                figure.addEventListener("click", event => {
                    if (event.target.closest("a")) return;
                    this.pause();
                    this.go(Number(figure.dataset.step));
                    this.root.scrollIntoView({ block: "nearest" });
                });
            }
        }

        jumps() {
            const present = [...new Set(this.talk.kind)].filter(kind => kind >= 0 && this.talk.kinds[kind] !== "");
            present.sort((a, b) => a - b);
            const usual = ["steal", "fork"].map(word => this.talk.kinds.indexOf(word)).find(kind => present.includes(kind));
            this.kind = make("select", { onchange: () => this.tellJumps() }, ...present.map(kind =>
                make("option", { value: kind, textContent: this.talk.kinds[kind], selected: kind === usual })));
            this.kind.setAttribute("aria-label", "Kind of event to jump to");
            this.previousOf = button("«", "Previous of this kind (P)", () => this.jump(-1));
            this.nextOf = button("»", "Next of this kind (N)", () => this.jump(1));
            this.previousOf.setAttribute("aria-label", "Previous of this kind");
            this.nextOf.setAttribute("aria-label", "Next of this kind");
            return [this.previousOf, this.kind, this.nextOf];
        }

        async go(step) {
            // A picture that comes late must not take the place of a later choice.
            const turn = this.turn = (this.turn ?? 0) + 1;
            this.at = Math.min(Math.max(step, this.talk.first), this.last);
            this.root.dataset.at = this.at;
            const part = narrow.matches ? "narrow" : "wide";
            const table = await load(this.id, part, `${this.files}-${part}.js`);
            if (turn !== this.turn) return;
            const index = this.at - this.talk.first;
            const lines = linesOf(table, index, this.cache);
            this.stage.innerHTML = `<svg viewBox="0 0 ${table.width} ${table.height}" aria-hidden="true" `
                + `font-family="IBM Plex Sans, sans-serif">${lines.map(n => table.lines[n]).join("")}</svg>`;
            this.sentence.textContent = this.talk.sentences[this.talk.said[index]];
            const count = new Intl.NumberFormat("en");
            this.clock.textContent = `After ${count.format(this.at)} of ${count.format(this.talk.all)} steps`
                + (this.talk.time.length === 0 ? "" : `, time ${count.format(this.talk.time[index])}${this.talk.unit === "units" ? "" : " " + this.talk.unit}`);
            this.scrub.value = this.at;
            this.scrub.setAttribute("aria-valuetext", this.clock.textContent);
            this.back.disabled = this.at === this.talk.first;
            this.next.disabled = this.at === this.last;
            this.tellJumps();
            this.stopButtons.forEach((one, i) => one.setAttribute("aria-pressed", this.stops[i].step === this.at));
            this.showLine(this.talk.line[index]);
        }

        showLine(line) {
            if (!this.program) return;
            this.program.querySelector(".rk-here")?.classList.remove("rk-here");
            if (line > 0) this.program.children[line - 1]?.classList.add("rk-here");
        }

        step(by) { this.pause(); this.go(this.at + by); }

        // The next step of the chosen kind in one direction; 0 when the player carries none.
        nearest(by) {
            const wanted = Number(this.kind.value);
            for (let at = this.at + by; at >= this.talk.first && at <= this.last; at += by) {
                if (this.talk.kind[at - this.talk.first] === wanted) return at;
            }
            return 0;
        }

        jump(by) {
            this.pause();
            const at = this.nearest(by);
            if (at) this.go(at);
        }

        tellJumps() {
            this.previousOf.disabled = !this.nearest(-1);
            this.nextOf.disabled = !this.nearest(1);
        }

        pause() {
            clearInterval(this.timer);
            this.timer = 0;
            this.play.textContent = "Play";
            this.says.setAttribute("aria-live", "polite");
        }

        toggle() {
            if (this.timer) { this.pause(); return; }
            if (this.at === this.last) this.go(this.talk.first);
            // While it plays, a reader of screens would fall behind: it speaks again when it stops.
            this.says.setAttribute("aria-live", "off");
            this.play.textContent = "Pause";
            this.timer = setInterval(() => {
                if (this.at >= this.last) this.pause(); else this.go(this.at + 1);
            }, 1000 / this.perSecond);
        }

        key(event) {
            if (event.altKey || event.ctrlKey || event.metaKey) return;
            const inField = event.target.tagName === "SELECT";
            const keys = {
                ArrowLeft: () => this.step(-1), ArrowRight: () => this.step(1),
                PageUp: () => this.step(-1), PageDown: () => this.step(1),
                Home: () => { this.pause(); this.go(this.talk.first); }, End: () => { this.pause(); this.go(this.last); },
                n: () => this.jump(1), p: () => this.jump(-1), " ": () => this.toggle(),
            };
            const action = keys[event.key] ?? keys[event.key.toLowerCase()];
            if (!action || inField || (event.key === " " && event.target.tagName === "BUTTON")) return;
            event.preventDefault();
            action();
        }
    }

    // --- The lab ------------------------------------------------------------------------------------------------

    // A link to the lab opens it at the step that the player stands at. A page that was opened by a double click cannot
    // open it: browsers load no WebAssembly from a folder.
    function toLab(event) {
        const link = event.target.closest?.("a.rk-lab");
        if (!link) return;
        if (location.protocol === "file:") {
            event.preventDefault();
            const note = link.nextElementSibling ?? link.parentElement.appendChild(make("span", { role: "status" }));
            note.textContent = " The lab needs a web server, since browsers load no WebAssembly from a folder: put this "
                + "folder on one, or run ./rookery serve. The player above works here as well.";
            return;
        }
        const at = link.closest(".rk-block").querySelector(".rk-player")?.dataset.at;
        if (at) link.hash = link.hash.replace(/&step=\d+/, "&step=" + at);
    }

    // A player's pictures are loaded when it comes near the window, so that a long lesson opens at once.
    function begin() {
        const players = document.querySelectorAll(".rk-player");
        const near = new IntersectionObserver(entries => {
            for (const entry of entries) {
                if (!entry.isIntersecting) continue;
                near.unobserve(entry.target);
                const root = entry.target.querySelector(".rk-player");
                // What cannot be loaded leaves the printed moments where they are.
                new Player(root).start().catch(() => root.remove());
            }
        }, { rootMargin: "900px" });
        players.forEach(player => near.observe(player.parentElement));
        document.addEventListener("click", toLab);
        document.addEventListener("auxclick", toLab);
    }

    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", begin); else begin();
    return { receive, linesOf };
})();
