// Looks at the lab from inside its page. Added before the page's own scripts.
(() => {
    const times = { stage: 0 };
    const channel = new MessageChannel();

    // Once the frame that comes next has been put together: style, layout and paint are done.
    const afterFrame = () => new Promise(done => requestAnimationFrame(() => {
        channel.port1.onmessage = () => done(performance.now());
        channel.port2.postMessage(0);
    }));
    const rest = milliseconds => new Promise(done => setTimeout(done, milliseconds));
    const clock = () => document.querySelector(".lab-clock")?.textContent ?? "";

    const look = () => {
        if (document.querySelector("#lab-stage-picture svg") && /\d/.test(clock())) times.stage = performance.now();
        else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);

    // How long the page's thread was kept from answering: gaps between timers that ask for no wait.
    function watch() {
        let last = performance.now(), most = 0, goesOn = true;
        const ping = () => {
            const now = performance.now();
            most = Math.max(most, now - last);
            last = now;
            if (goesOn) setTimeout(ping);
        };
        ping();
        return () => { goesOn = false; return most; };
    }

    async function until(isSo) {
        while (!isSo()) await new Promise(requestAnimationFrame);
        return await afterFrame();
    }

    const press = key => document.body.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));

    window.probe = {
        times,
        clock,

        // Of a step: its script; that and the work of the frame after it, without the wait in between; with the wait.
        async steps(count) {
            const scripts = [], frames = [], shown = [];
            for (let i = 0; i < count; i++) {
                await rest(40 + 17 * (i % 7));
                let frame = 0;
                requestAnimationFrame(() => { frame = performance.now(); });
                const start = performance.now();
                press("ArrowRight");
                const script = performance.now() - start, end = await afterFrame();
                scripts.push(script);
                frames.push(script + end - frame);
                shown.push(end - start);
            }
            return { scripts, frames, shown };
        },

        // From the moment a file is there until its run stands on the stage, and until the lab says what it found.
        async opened() {
            let start = 0;
            await new Promise(done => addEventListener("change", event => {
                if (event.target.type === "file") { start = performance.now(); done(); }
            }, { capture: true }));
            const end = watch(), former = clock().split(" of ")[1];
            const shown = await until(() => clock().split(" of ")[1] !== former);
            const said = await until(() => document.querySelector(".lab-notices [role=status] p"));
            return { milliseconds: shown - start, audited: said - start, pause: end() };
        },

        // Frames a second while something is moved at every frame.
        async moved(kind, seconds) {
            const range = document.querySelector(".lab-scrub"), canvas = document.getElementById("lab-timeline");
            const place = canvas.getBoundingClientRect();
            const moves = {
                scrub(i) {
                    const share = 0.5 - 0.5 * Math.cos(i / 40);
                    range.value = Math.round(share * range.max);
                    range.dispatchEvent(new Event("input", { bubbles: true }));
                },
                zoom(i) {
                    canvas.dispatchEvent(new WheelEvent("wheel", {
                        deltaY: i % 120 < 60 ? -60 : 60, bubbles: true, cancelable: true,
                        clientX: place.left + place.width / 3, clientY: place.top + 9 }));
                },
            };
            const gaps = [], scripts = [];
            let last = await afterFrame();
            const begin = last;
            for (let i = 0; last - begin < seconds * 1000; i++) {
                await new Promise(done => requestAnimationFrame(() => {
                    const now = performance.now();
                    moves[kind](i);
                    scripts.push(performance.now() - now);
                    done();
                }));
                const now = await afterFrameHere();
                gaps.push(now - last);
                last = now;
            }
            return { gaps, scripts };
        },

        // Another run, made in the page and shown.
        async made(fragment, told) {
            const start = performance.now(), end = watch();
            location.hash = fragment;
            const shown = await until(() => clock().includes(told));
            return { milliseconds: shown - start, pause: end() };
        },

        async study() {
            const button = () => document.querySelector(".study-run .lab-primary");
            const long = [];
            const observer = new PerformanceObserver(list => long.push(...list.getEntries().map(entry => entry.duration)));
            observer.observe({ type: "longtask" });
            const start = performance.now(), end = watch();
            button().click();
            await until(() => document.querySelector(".study-run .lab-button:not(.lab-primary)"));
            const done = await until(() => !document.querySelector(".study-run .lab-button:not(.lab-primary)"));
            const pause = end();
            await rest(200);
            observer.disconnect();
            const words = [...document.querySelectorAll(".study-asks p.lab-quiet")].map(p => p.textContent)
                .find(text => /events/.test(text)) ?? "";
            const events = Number((/([\d,\u202F]+) events/.exec(words)?.[1] ?? "0").replaceAll(/[,\u202F]/g, ""));
            return { milliseconds: done - start, pause, long, events };
        },

        // What the machine gives at present: the same sums each time.
        yardstick() {
            const start = performance.now();
            let x = 1;
            for (let i = 0; i < 30_000_000; i++) { x ^= x << 13; x ^= x >>> 17; x ^= x << 5; }
            return performance.now() - start + (x === 0 ? 1 : 0);
        },

        // What was fetched, by address.
        fetched: () => performance.getEntriesByType("resource").map(entry => entry.name),
    };

    function afterFrameHere() {
        return new Promise(done => {
            channel.port1.onmessage = () => done(performance.now());
            channel.port2.postMessage(0);
        });
    }
})();
