// How much fits beside each other. Text may be as large as its reader needs, by the device or by the browser, and no
// stylesheet's question asks about both the window's width and the size of the text: so it is measured here.

/** Fewer widths of a letter's size than this across the window, and things stand one under another. */
const TIGHT_BELOW_REM = 17;

class Room {
  /** Large text on a small screen. */
  isTight = $state(false);

  /** Keeps looking; a line as wide as the text is large tells when either changes. */
  watch(): () => void {
    const line = document.createElement('div');
    line.className = 'room-line';
    document.body.append(line);
    const look = (): void => {
      const remPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      this.isTight = window.innerWidth < TIGHT_BELOW_REM * remPx;
    };
    const watching = new ResizeObserver(look);
    watching.observe(line);
    window.addEventListener('resize', look);
    look();
    return () => {
      watching.disconnect();
      window.removeEventListener('resize', look);
      line.remove();
    };
  }
}

/** The one window. */
export const room = new Room();
