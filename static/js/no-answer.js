// A request that fails must not leave the reader guessing: say so where messages stand.
"use strict";

function sayNoAnswer() {
  const sentence = document.getElementById("no-answer");
  document.getElementById("messages").replaceChildren(sentence.content.cloneNode(true));
}

for (const failure of ["htmx:responseError", "htmx:sendError", "htmx:timeout", "htmx:swapError"]) {
  document.addEventListener(failure, sayNoAnswer);
}
