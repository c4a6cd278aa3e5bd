// The row one types in is the chosen one, so that "Row under the chosen one" means it.
"use strict";

document.addEventListener("focusin", (event) => {
  const choice = event.target.closest(".write tbody tr")?.querySelector("input[type=radio]");
  if (choice) choice.checked = true;
});
