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
    let version = null;
    news.addEventListener("version", event => {
        if (version !== null && version !== event.data) {
            sessionStorage.setItem(place, String(scrollY));
            location.reload();
        }
        version = event.data;
    });
})();
