// Shows each change of the lesson by itself while it is served: the server says when there is one.
"use strict";
(() => {
    const place = "rookery-place:" + location.pathname;
    const kept = sessionStorage.getItem(place);
    if (kept !== null) {
        sessionStorage.removeItem(place);
        addEventListener("load", () => scrollTo(0, Number(kept)));
    }
    const news = new EventSource("/live");

    // What was saved between the sending of this page and now is told as the first version: it is another one than that
    // of the page, which the server said when it sent it.
    const sent = performance.getEntriesByType("navigation")[0]?.serverTiming ?? [];
    let version = sent.find(one => one.name === "version")?.description ?? null;
    news.addEventListener("version", event => {
        if (version !== null && version !== event.data) {
            sessionStorage.setItem(place, String(scrollY));
            location.reload();
        }
        version = event.data;
    });
})();
