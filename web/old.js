// For browsers that are too old to read start.js: plain words in the plainest script.
(function () {
  var status = document.getElementById("boot");
  status.className = "failed";
  status.hidden = false;
  status.removeAttribute("hidden");
  status.appendChild(document.createTextNode(
    "This browser is too old for the calculator. The page can still be read. A browser of 2020 or later will compute as well."));
})();
