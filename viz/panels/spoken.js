// Tells the browser which language the page is in: readers aloud and hyphens go by it.
export default function ({ data }) {
  document.documentElement.lang = data;
}
