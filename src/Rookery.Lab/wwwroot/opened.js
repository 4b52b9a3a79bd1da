// A page that was opened by a double click: browsers load no WebAssembly from a folder, so it says what is needed instead.
if (location.protocol === "file:") {
    document.getElementById("lab").hidden = true;
    document.getElementById("lab-needs-server").hidden = false;
}
