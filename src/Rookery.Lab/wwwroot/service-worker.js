// While the lab is being developed nothing is kept: every load shows the newest files.
self.addEventListener("fetch", () => { });
