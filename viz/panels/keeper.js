// Keeps the visit's work in this tab's own store: it outlives a reload, and closes with the tab.
const NAME = "bedcourse work";
let visit = null;

function read() {
  try {
    return sessionStorage.getItem(NAME);
  } catch {
    return null;
  }
}

function write(held) {
  try {
    sessionStorage.setItem(NAME, held);
  } catch {
    // A full or forbidden store keeps nothing; the page works on without it.
  }
}

export default function (component) {
  const { data, setTriggerValue } = component;
  const kept = visit === data.visit ? null : read();
  visit = data.visit;
  if (kept !== null && kept !== data.held) {
    setTriggerValue("found", kept);
  } else {
    write(data.held);
  }
}
