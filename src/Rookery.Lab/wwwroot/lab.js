// What the lab asks of the browser. It knows no scheduler: pictures and sentences come ready from the program.
const still = matchMedia("(prefers-reduced-motion: reduce)");
const dark = matchMedia("(prefers-color-scheme: dark)");
const root = document.documentElement;
let marked = -1;

// --- Pictures -----------------------------------------------------------------------------------------------------

// Where a task is drawn, by the first mark of its group. Read from the picture's own numbers: asking the page where
// things are would have it laid out.
function placeOf(element) {
    const mark = element.querySelector("rect, text");
    if (!mark) return null;
    const numberOf = name => Number(mark.getAttribute(name));
    return { x: numberOf("x"), y: numberOf("y") - (mark.nodeName === "text" ? numberOf("font-size") : 0) };
}

const tasksIn = picture => picture.querySelectorAll("[data-target^='task=']");

// What a picture changes to become another: nothing is changed before all is known. What is the same stays: of a picture
// a step changes a few rows, and no more than that is laid out and painted anew.
function collectChanges(old, fresh, changes) {
    if (old.isEqualNode(fresh)) return;
    const isTask = old.dataset?.target?.startsWith("task=");
    if (isTask || old.nodeName !== fresh.nodeName || old.id !== fresh.id || !old.firstElementChild) {
        changes.push(() => old.replaceWith(fresh));
        return;
    }
    for (const { name } of old.attributes)
        if (!fresh.hasAttribute(name)) changes.push(() => old.removeAttribute(name));
    for (const { name, value } of fresh.attributes)
        if (old.getAttribute(name) !== value) changes.push(() => old.setAttribute(name, value));
    let at = old.firstChild;
    for (const next of [...fresh.childNodes]) {
        const after = at?.nextSibling;
        if (at) collectChanges(at, next, changes); else changes.push(() => old.append(next));
        at = after;
    }
    for (; at; at = at.nextSibling) {
        const gone = at;
        changes.push(() => gone.remove());
    }
}

const parsed = document.createElement("template");

function pictureOf(svg) {
    parsed.innerHTML = svg;
    return parsed.content.firstElementChild;
}

// What takes a host from the picture in it to a new one: the changes, and from where each task glides to its place.
function planOf(host, fresh) {
    const old = host.firstElementChild, changes = [], glides = [];
    if (!old) return { changes: [() => host.replaceChildren(fresh)], glides };
    // The last drawn of several wins, as it lies on top.
    const before = new Map();
    for (const element of tasksIn(old)) before.set(element.dataset.target, placeOf(element));
    for (const element of tasksIn(fresh)) {
        const from = before.get(element.dataset.target), to = placeOf(element);
        if (from && to && Math.abs(from.x - to.x) + Math.abs(from.y - to.y) >= 2)
            glides.push({ element, x: from.x - to.x, y: from.y - to.y });
    }
    collectChanges(old, fresh, changes);
    return { changes, glides };
}

function carryOut(host, { changes, glides }) {
    for (const change of changes) change();
    if (marked >= 0) markIn(host);
    if (still.matches) return;
    for (const { element, x, y } of glides)
        element.animate(
            [{ transform: `translate(${x}px, ${y}px)` }, { transform: "none" }],
            { duration: 420, easing: "cubic-bezier(.3, 0, .2, 1)" });
}

// For each host the plan for the picture that probably comes next, until another one comes.
const plans = new Map();

export function draw(id, svg, moves) {
    const host = document.getElementById(id);
    plans.delete(id);
    if (!host) return;
    const fresh = pictureOf(svg);
    if (moves) {
        carryOut(host, planOf(host, fresh));
    } else {
        host.replaceChildren(fresh);
        if (marked >= 0) markIn(host);
    }
}

export function drawAhead(id, svg) {
    const host = document.getElementById(id);
    if (host) plans.set(id, planOf(host, pictureOf(svg)));
}

export function showAhead(id) {
    const host = document.getElementById(id), plan = plans.get(id);
    plans.delete(id);
    if (host && plan) carryOut(host, plan);
}

function markIn(host) {
    for (const element of host.querySelectorAll(".lab-marked")) element.classList.remove("lab-marked");
    if (marked < 0) return;
    for (const element of host.querySelectorAll(`[data-target='task=${marked}']`)) element.classList.add("lab-marked");
}

export function mark(task) {
    marked = task;
    for (const host of document.querySelectorAll(".lab-picture")) markIn(host);
}

// --- Timelines ----------------------------------------------------------------------------------------------------

// For the rows' numbers. Asking how wide things are lays the page out: it is kept from one painting to the next.
const rooms = new Map();
const gutterOf = () => 1.7 * parseFloat(getComputedStyle(root).fontSize);
const lanes = [0.78, 0.5, 0.26, 0.1];

// Kinds differ by height as well as by paint: computing fills the row, searching is a low strip, rest a line.
export function paint(id, rows, bars, links, paints) {
    const canvas = document.getElementById(id);
    if (!canvas) return;
    const scale = devicePixelRatio || 1, width = canvas.clientWidth, height = canvas.clientHeight;
    if (canvas.width !== Math.floor(width * scale)) canvas.width = width * scale;
    if (canvas.height !== Math.floor(height * scale)) canvas.height = height * scale;
    const pen = canvas.getContext("2d");
    pen.setTransform(scale, 0, 0, scale, 0, 0);
    pen.clearRect(0, 0, width, height);
    const colours = paints.split(" "), workers = colours.length - 5;
    const [scheduling, searching, rest, ink, ground] = colours.slice(workers);
    const gutter = gutterOf(), room = width - gutter - 6, pitch = (height - 6) / rows;
    rooms.set(id, { gutter, room });
    pen.font = `600 ${Math.min(gutter * 0.55, Math.max(7, pitch * 0.7))}px "IBM Plex Sans", sans-serif`;
    pen.textBaseline = "middle";
    pen.textAlign = "right";
    for (let row = 0; row < rows; row++) {
        pen.fillStyle = ground;
        pen.fillRect(gutter, 3 + row * pitch + pitch * 0.08, room, pitch * 0.84);
        pen.fillStyle = ink;
        if (pitch >= 9 || row % Math.ceil(9 / pitch) === 0) pen.fillText(row, gutter - 6, 3 + (row + 0.5) * pitch);
    }
    const data = bars.slice();
    let used = "";
    for (let i = 0; i < data.length; i += 6) {
        const lane = data[i + 3], tall = pitch * lanes[lane] * (data[i + 5] < 1 ? data[i + 5] : 1);
        const colour = lane === 0 ? colours[data[i + 4] % workers] : lane === 1 ? scheduling : lane === 2 ? searching : rest;
        if (colour !== used) pen.fillStyle = used = colour;
        const bottom = 3 + data[i + 1] * pitch + pitch * 0.89;
        pen.fillRect(gutter + data[i] * room, bottom - tall, Math.max(0.75, data[i + 2] * room - (data[i + 2] * room > 4 ? 0.75 : 0)), tall);
    }
    const steals = links.slice();
    pen.strokeStyle = ink;
    pen.fillStyle = ink;
    pen.lineWidth = 1;
    for (let i = 0; i < steals.length; i += 3) {
        const x = gutter + steals[i] * room, from = 3 + (steals[i + 1] + 0.5) * pitch, to = 3 + (steals[i + 2] + 0.5) * pitch;
        pen.beginPath();
        pen.moveTo(x, from);
        pen.lineTo(x, to);
        pen.stroke();
        const tip = to > from ? -4 : 4;
        pen.beginPath();
        pen.moveTo(x, to);
        pen.lineTo(x - 3.5, to + tip);
        pen.lineTo(x + 3.5, to + tip);
        pen.fill();
    }
}

export function point(host, id, share) {
    const line = document.getElementById(id), place = rooms.get(host);
    if (!line || !place) return;
    line.hidden = share < 0 || share > 1;
    line.style.translate = `${place.gutter + share * place.room}px 0`;
}

export function listenToTime(onTime, onZoom, onPan) {
    let held = false;
    const shareOf = event => {
        const place = document.getElementById("lab-timeline")?.getBoundingClientRect();
        const gutter = gutterOf();
        return place ? Math.min(1, Math.max(0, (event.clientX - place.left - gutter) / (place.width - gutter - 6))) : 0;
    };
    const isOver = event => event.target.closest?.(".lab-timeline-frame") != null;
    addEventListener("pointerdown", event => {
        if (!isOver(event)) return;
        held = true;
        onTime(shareOf(event));
    });
    addEventListener("pointermove", event => { if (held) onTime(shareOf(event)); });
    addEventListener("pointerup", () => { held = false; });
    addEventListener("pointercancel", () => { held = false; });
    addEventListener("wheel", event => {
        if (!isOver(event)) return;
        event.preventDefault();
        if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY))
            onPan((event.deltaX || event.deltaY) / 800);
        else
            onZoom(shareOf(event), Math.exp(-event.deltaY / 400));
    }, { passive: false });
}

export function showDialog(id, isOpen) {
    const dialog = document.getElementById(id);
    if (isOpen && !dialog.open) dialog.showModal();
    if (!isOpen && dialog.open) dialog.close();
}

export const widthOf = id => document.getElementById(id)?.clientWidth ?? 0;
export const heightOf = id => document.getElementById(id)?.clientHeight ?? 0;

// Told once the page has been laid out, so that no one has to ask at every step. The first news is of the size that was
// there at the beginning.
export function watchSize(id, onSize) {
    const element = document.getElementById(id);
    if (!element) return;
    const observer = new ResizeObserver(() => {
        if (element.isConnected) onSize(element.clientWidth, element.clientHeight); else observer.disconnect();
    });
    observer.observe(element);
}

// --- What happens in the page -------------------------------------------------------------------------------------

const ownKeys = { input: true, textarea: true, select: true };

export function listen(onKey, onTarget, onResize, onFragment) {
    document.addEventListener("keydown", event => {
        const tag = event.target.tagName?.toLowerCase();
        if (event.altKey || event.isComposing) return;
        if (event.target.dataset?.editor !== undefined && editorKey(event, onKey)) return;
        const isScrub = tag === "input" && event.target.type === "range";
        // Only where text is typed does taking back belong to the field.
        const isTakingBack = (event.ctrlKey || event.metaKey) && /^[zy]$/i.test(event.key)
            && tag === "input" && /^(range|radio|checkbox)$/.test(event.target.type);
        if (event.target.closest?.("[role=tab]") && /^Arrow/.test(event.key)) return;
        const isOwn = event.key.startsWith("Arrow") || event.key === "Home" || event.key === "End";
        if (ownKeys[tag] && !isTakingBack && !(isScrub && !isOwn))
            return;
        // Space and Enter belong to the button that has the focus.
        if ((event.key === " " || event.key === "Enter") && event.target.closest?.("button, a, summary, [role=tab]"))
            return;
        if (event.target.closest?.("dialog")) return;
        const modifiers = (event.shiftKey ? 1 : 0) + (event.ctrlKey || event.metaKey ? 2 : 0);
        if (onKey(event.key, modifiers)) event.preventDefault();
    });
    document.addEventListener("click", event => {
        const host = event.target.closest?.(".lab-picture");
        if (host) onTarget(host.id, event.target.closest("[data-target]")?.dataset.target ?? "");
    });
    let asked = 0;
    const resize = () => { cancelAnimationFrame(asked); asked = requestAnimationFrame(() => onResize()); };
    addEventListener("resize", resize);
    dark.addEventListener("change", resize);
    addEventListener("hashchange", () => onFragment(fragment()));
}

// --- The editor ---------------------------------------------------------------------------------------------------

// Enter keeps the indentation; taking back is the program's, which knows more than the last keys. Tab leaves the field.
function editorKey(event, onKey) {
    const field = event.target, control = event.ctrlKey || event.metaKey;
    if (control && /^[zy]$/i.test(event.key)) {
        if (onKey(event.key, (event.shiftKey ? 1 : 0) + 2)) event.preventDefault();
        return true;
    }
    if (event.key !== "Enter" || control || event.shiftKey) return false;
    const start = field.value.lastIndexOf("\n", field.selectionStart - 1) + 1;
    const indent = /^ */.exec(field.value.slice(start, field.selectionStart))[0];
    event.preventDefault();
    field.setRangeText("\n" + indent, field.selectionStart, field.selectionEnd, "end");
    field.dispatchEvent(new Event("input", { bubbles: true }));
    return true;
}

export function placeCaret(id, offset, length) {
    const field = document.getElementById(id);
    if (!field) return;
    field.focus();
    field.setSelectionRange(offset, offset + length);
    const line = field.value.slice(0, offset).split("\n").length - 1;
    document.getElementById(`${id}-line-${line}`)?.scrollIntoView({ block: "nearest", inline: "nearest" });
}

let taken = null;
export const takeFile = () => taken;

export function listenToFiles(onFile) {
    const take = async file => {
        taken = new Uint8Array(await file.arrayBuffer());
        onFile(file.name);
    };
    addEventListener("dragover", event => event.preventDefault());
    addEventListener("drop", event => {
        event.preventDefault();
        for (const file of event.dataTransfer.files) take(file);
    });
    document.addEventListener("change", event => {
        if (event.target.type !== "file") return;
        for (const file of event.target.files) take(file);
        event.target.value = "";
    });
}

export const breathe = () => new Promise(resolve => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => resolve();
    channel.port2.postMessage(0);
});
export const now = () => performance.now();

// When the next frame has been shown and nothing else is to be done; soon after it, where the browser does not say when.
export const rest = () => new Promise(resolve => requestAnimationFrame(() =>
    globalThis.requestIdleCallback ? requestIdleCallback(() => resolve(), { timeout: 500 }) : setTimeout(resolve, 30)));

// --- The address --------------------------------------------------------------------------------------------------

export const fragment = () => location.hash.slice(1);
export const address = () => location.href;
export function setFragment(text) {
    if (text !== fragment()) history.replaceState(null, "", "#" + text);
}

export async function copy(text) {
    try { await navigator.clipboard.writeText(text); return true; } catch { return false; }
}

// Only from the lab's own origin, also when a server sends elsewhere, and not without end.
const fetchedMax = 20 << 20;
export async function fetchText(relative) {
    const url = new URL(relative, document.baseURI);
    if (url.origin !== location.origin) return null;
    try {
        const answer = await fetch(url, { redirect: "error", credentials: "omit" });
        if (!answer.ok) return null;
        const reader = answer.body.getReader(), decoder = new TextDecoder();
        let text = "", size = 0;
        for (let part = await reader.read(); !part.done; part = await reader.read()) {
            size += part.value.length;
            if (size > fetchedMax) { reader.cancel(); return null; }
            text += decoder.decode(part.value, { stream: true });
        }
        return text + decoder.decode();
    } catch { return null; }
}

// --- Files --------------------------------------------------------------------------------------------------------

function offer(name, blob) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

export const save = (name, type, bytes) => offer(name, new Blob([bytes], { type }));

// An SVG that is drawn as an image sees no font of the page: it gets them inside, or, without them, the system's.
async function fontsInPlace() {
    const faces = await Promise.all([["Sans", 400], ["Sans", 600], ["Mono", 400]].map(
        async ([kind, weight]) => {
            const answer = await fetch(`fonts/ibm-plex-${kind.toLowerCase()}-latin-${weight}-normal.woff2`);
            const bytes = new Uint8Array(await answer.arrayBuffer());
            let letters = "";
            for (let at = 0; at < bytes.length; at += 8192) letters += String.fromCharCode(...bytes.subarray(at, at + 8192));
            return `@font-face{font-family:"IBM Plex ${kind}";font-weight:${weight};src:url(data:font/woff2;base64,${btoa(letters)})}`;
        })).catch(() => []);
    return `<style>${faces.join("")}</style>`;
}

export async function savePng(name, svg, scale) {
    const image = new Image();
    const whole = svg.replace(/^(<svg[^>]*>)/, "$1" + await fontsInPlace());
    image.src = URL.createObjectURL(new Blob([whole], { type: "image/svg+xml" }));
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = image.naturalWidth * scale;
    canvas.height = image.naturalHeight * scale;
    canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
    URL.revokeObjectURL(image.src);
    offer(name, await new Promise(resolve => canvas.toBlob(resolve, "image/png")));
}

// --- How it looks -------------------------------------------------------------------------------------------------

export function setTheme(theme) {
    if (theme) root.dataset.theme = theme; else delete root.dataset.theme;
}
export const isDark = () => root.dataset.theme ? root.dataset.theme === "dark" : dark.matches;
export const setMode = (mode, isOn) => { root.classList.toggle("lab-" + mode, isOn); };
export function toggleFullScreen() {
    if (document.fullscreenElement) document.exitFullscreen(); else root.requestFullscreen?.();
}
export const setLanguage = code => { root.lang = code; };
export const preferredLanguage = () => navigator.language ?? "";
export const print = () => window.print();
export function reveal(id) {
    const element = document.getElementById(id), frame = element?.closest(".lab-scrolls");
    if (!frame) return;
    const place = element.getBoundingClientRect(), room = frame.getBoundingClientRect(), space = 2 * place.height;
    if (place.top < room.top) frame.scrollTop += place.top - room.top - space;
    else if (place.bottom > room.bottom) frame.scrollTop += place.bottom - room.bottom + space;
}
export const focus = id => document.getElementById(id)?.focus();

// Not before the lab stands: what is kept for later must not hold up what is wanted now.
if ("serviceWorker" in navigator && isSecureContext)
    setTimeout(() => navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" }).catch(() => { }), 3000);
