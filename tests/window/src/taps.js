// Watches taps from inside the page, once installed. Called with (isAnswered): whether a tap is answered by the core,
// which the page shows by being busy until the answer is drawn; without it the first change of the page is the answer.
// Each tap that a driver's pointer made ends up in `window.taps` as [drawn, painted], in milliseconds from the event's
// own timestamp, which is the moment at which the window was given the tap. Painted is the second frame's beginning: by
// then the first one with the answer on it has been made.
const [isAnswered] = arguments;
if (!window.taps) {
  window.taps = [];
  let tap = null;
  document.addEventListener(
    "click",
    (event) => {
      if (event.isTrusted) tap = { at: event.timeStamp, wasBusy: false };
    },
    true,
  );
  const look = () => {
    if (tap === null) return;
    const isBusy = document.querySelector("[aria-busy=true]") !== null;
    if (isBusy) tap.wasBusy = true;
    if (isBusy || (isAnswered && !tap.wasBusy)) return;
    const { at } = tap;
    const drawn = performance.now() - at;
    tap = null;
    const painted = () => window.taps.push([drawn, performance.now() - at]);
    requestAnimationFrame(() => requestAnimationFrame(painted));
  };
  const all = { subtree: true, childList: true, attributes: true, characterData: true };
  new MutationObserver(look).observe(document, all);
}
return window.taps.length;
