// What the lab asks of the browser. It knows no scheduler: pictures and sentences come ready from the program.
const still = matchMedia("(prefers-reduced-motion: reduce)");
const dark = matchMedia("(prefers-color-scheme: dark)");
const root = document.documentElement;
let marked = -1;

// --- Pictures -----------------------------------------------------------------------------------------------------

// Where each task is drawn; the last drawn of several wins, as it lies on top.
function placesOf(host) {
    const places = new Map();
    for (const element of host.querySelectorAll("[data-target^='task=']"))
        places.set(element.dataset.target, element.getBoundingClientRect());
    return places;
}

function glide(element, from, to) {
    if (!from || to.width === 0) return;
    const x = from.left - to.left, y = from.top - to.top;
    if (Math.abs(x) + Math.abs(y) < 2) return;
    element.animate(
        [{ transform: `translate(${x}px, ${y}px)` }, { transform: "none" }],
        { duration: 420, easing: "cubic-bezier(.3, 0, .2, 1)" });
}

export function draw(id, svg, moves) {
    const host = document.getElementById(id);
    if (!host) return;
    const before = moves && !still.matches ? placesOf(host) : null;
    host.innerHTML = svg;
    if (marked >= 0) markIn(host);
    if (!before || before.size === 0) return;
    for (const element of host.querySelectorAll("[data-target^='task=']"))
        glide(element, before.get(element.dataset.target), element.getBoundingClientRect());
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

// The rows of a timeline are as long as the run: the first one says where the run begins and ends.
const rowOf = host => document.querySelector(`#${host} [id$="row-0"] rect`);

export function point(host, id, share) {
    const line = document.getElementById(id), row = rowOf(host);
    if (!line) return;
    line.hidden = !row;
    if (!row) return;
    const frame = line.parentElement.getBoundingClientRect(), place = row.getBoundingClientRect();
    line.style.translate = `${place.left - frame.left + share * place.width}px 0`;
}

export function listenToTime(onTime) {
    let held = false;
    const tell = event => {
        const row = rowOf("lab-timeline")?.getBoundingClientRect();
        if (row) onTime(Math.min(1, Math.max(0, (event.clientX - row.left) / row.width)));
    };
    addEventListener("pointerdown", event => {
        if (!event.target.closest?.(".lab-timeline-frame")) return;
        held = true;
        tell(event);
    });
    addEventListener("pointermove", event => { if (held) tell(event); });
    addEventListener("pointerup", () => { held = false; });
}

export function showDialog(id, isOpen) {
    const dialog = document.getElementById(id);
    if (isOpen && !dialog.open) dialog.showModal();
    if (!isOpen && dialog.open) dialog.close();
}

export const widthOf = id => document.getElementById(id)?.clientWidth ?? 0;
export const heightOf = id => document.getElementById(id)?.clientHeight ?? 0;

// --- What happens in the page -------------------------------------------------------------------------------------

const ownKeys = { input: true, textarea: true, select: true };

export function listen(onKey, onTarget, onResize, onFragment) {
    document.addEventListener("keydown", event => {
        const tag = event.target.tagName?.toLowerCase();
        if (event.altKey || event.isComposing) return;
        const isScrub = tag === "input" && event.target.type === "range";
        if (ownKeys[tag] && !(isScrub && !event.key.startsWith("Arrow") && event.key !== "Home" && event.key !== "End"))
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

// --- The address --------------------------------------------------------------------------------------------------

export const fragment = () => location.hash.slice(1);
export const address = () => location.href;
export function setFragment(text) {
    if (text !== fragment()) history.replaceState(null, "", "#" + text);
}

export async function copy(text) {
    try { await navigator.clipboard.writeText(text); return true; } catch { return false; }
}

export async function fetchText(relative) {
    const url = new URL(relative, document.baseURI);
    if (url.origin !== location.origin) return null;
    try {
        const answer = await fetch(url);
        return answer.ok ? await answer.text() : null;
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

export async function savePng(name, svg, scale) {
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
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
export const focus = id => document.getElementById(id)?.focus();

if ("serviceWorker" in navigator && (location.protocol === "https:" || location.hostname === "localhost" || location.hostname === "127.0.0.1"))
    navigator.serviceWorker.register("service-worker.js");
