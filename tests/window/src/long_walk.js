// A long walk in a short time, for the memory it leaves behind: the page's own buttons are pressed as soon as the last
// answer was painted. Called with (n, done): so many rounds of a pass done and taken back, and one pause. Between two
// taps on the large button something else is opened, since it takes a second tap within half a second for a bounce.
// Answers with the number of the visit's last event.
const [nRounds, done] = arguments;
const frame = () => new Promise((go) => requestAnimationFrame(go));
async function until(what, look) {
  for (let n = 0; n < 600; n += 1) {
    const found = look();
    if (found) return found;
    await frame();
  }
  throw new Error(`waited for ${what}; the page is "${document.querySelector("h1")?.innerText}"`);
}
const idle = () => document.querySelector("[aria-busy=true]") === null;
const named = (name) => [...document.querySelectorAll("button")].find((b) => b.innerText.trim() === name && !b.disabled);
const heading = (name) => () => idle() && document.querySelector("h1").innerText === name;
async function press(name) {
  (await until(name, () => idle() && named(name))).click();
  await frame();
  await until("the answer", idle);
}
async function main(words) {
  const button = () => document.querySelector("button[aria-busy]");
  (await until(words, () => idle() && button()?.innerText.includes(words) && button())).click();
  await frame();
  await until("the answer", idle);
}
async function walk() {
  for (let n = 0; n < nRounds; n += 1) {
    await main(" done");
    await press("Take back");
    await press("More");
    await main("Back to the walk");
    await until("the walk", heading("Walk"));
  }
  await press("Pause");
  await until("the pause", heading("Paused"));
  for (const box of document.querySelectorAll("input[type=checkbox]:not(:checked)")) box.click();
  await frame();
  await main("Carry on walking");
  await until("the walk", heading("Walk"));
  const visit_id = location.hash.split("/").at(-1);
  const answer = await window.__TAURI_INTERNALS__.invoke("ask", { ask: { ask: "visit", visit_id } });
  return answer.value.seq;
}
walk().then(done, (why) => done(String(why)));
