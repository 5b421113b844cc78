// For browsers that are too old to read start.js: plain words in the plainest script.
(function () {
  var words = {
    tooOld: "This browser is too old to run the calculator. Try one from 2020 or later. You can still read the page."
  };
  var status = document.getElementById("boot");
  status.className = "failed";
  status.hidden = false;
  status.removeAttribute("hidden");
  status.appendChild(document.createTextNode(words.tooOld));
})();
