"use strict";
(() => {
  const boards = [...document.querySelectorAll(".board")];
  let at = Math.max(0, boards.findIndex(each => "#" + each.id === location.hash));
  const turn = document.createElement("nav");
  turn.className = "turn";
  turn.setAttribute("aria-label", "Pages");
  const button = (sign, name, act) => {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = sign;
    made.setAttribute("aria-label", name);
    made.addEventListener("click", act);
    turn.append(made);
    return made;
  };
  const show = (place, move = true) => {
    at = Math.min(Math.max(place, 0), boards.length - 1);
    boards.forEach((each, number) => each.classList.toggle("seen", number === at));
    history.replaceState(null, "", "#" + boards[at].id);
    if (move) boards[at].focus({preventScroll: true});
    scrollTo(0, 0);
  };
  button("\u2190", "Page before", () => show(at - 1, false));
  button("\u2192", "Next page", () => show(at + 1, false));
  const all = button("\u2261", "All pages", () => {
    const one = document.documentElement.classList.toggle("turned");
    all.setAttribute("aria-pressed", String(!one));
    boards[at].scrollIntoView();
  });
  all.setAttribute("aria-pressed", "false");
  const keys = {ArrowRight: () => at + 1, PageDown: () => at + 1, ArrowLeft: () => at - 1, PageUp: () => at - 1,
    Home: () => 0, End: () => boards.length - 1};
  addEventListener("keydown", event => {
    const turned = document.documentElement.classList.contains("turned");
    const scrolls = event.target.closest && event.target.closest(".wide");
    if (!turned || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey || !(event.key in keys)) return;
    if (scrolls && scrolls.scrollWidth > scrolls.clientWidth + 1) return;
    event.preventDefault();
    show(keys[event.key]());
  });
  document.documentElement.classList.add("turned");
  document.body.append(turn);
  show(at, false);
})();
