// Says why the page does not start. A script of the old kind, by itself: it runs where the page's own cannot, as from a file,
// and understands nothing newer than the oldest browser that may come here.
(function () {
  var root = document.documentElement;

  function say(reason, words, name) {
    // The first thing that went wrong is the reason; and once the page has started, it says such things itself.
    if (root.hasAttribute("data-opening") || document.querySelector(".opening") === null) return;
    root.setAttribute("data-opening", reason);
    // Looked up anew: these words may have gone and come back.
    var title = document.getElementById("opening-title");
    var why = document.getElementById("opening-why");
    if (title !== null) title.textContent = words;
    if (why !== null && name) why.textContent = " (" + name + ")";
  }

  function fault(error) {
    say("fault", "The page cannot be shown", error && typeof error.name === "string" ? error.name : "");
  }

  if (location.protocol === "file:") say("file", "This page can’t start from a file");
  else root.setAttribute("data-served", "");

  window.addEventListener(
    "error",
    function (event) {
      var from = event.target;
      // A script or stylesheet that does not come is heard on the way down only.
      if (from instanceof HTMLScriptElement || (from instanceof HTMLLinkElement && from.rel === "stylesheet"))
        say("lost", "The page could not be fetched");
      else if (from === window) fault(event.error);
    },
    true,
  );
  window.addEventListener("unhandledrejection", function (event) {
    fault(event.reason);
  });
})();
