"""Opening and saving: examples, a file of one's own, the design as a file."""

import tomllib

import streamlit as st

from geometry.designfile import start_text
from viz.carried import examples
from viz.panels import state
from viz.panels.spoken import later, named, said

_FIRST = later("a first design with notes")


def opening() -> None:
    """Show what can be opened and saved."""
    st.selectbox(
        said("Open an example"), [*_named(), _FIRST], index=None, key="example",
        format_func=named(), placeholder=said("all examples are invented"), on_change=_open_example,
    )  # fmt: skip
    st.file_uploader(
        said("Open a design file"),
        type=["toml"],
        key="upload",
        on_change=_open_upload,
        max_upload_size=1,
    )
    st.download_button(
        said("Save the design file"), state.text(), "design.toml", "application/toml",
        icon=":material/download:", on_click="ignore", width="stretch",
    )  # fmt: skip


@st.cache_data(show_spinner=False)
def _named() -> dict[str, str]:
    """Return the examples' texts by the names of their projects."""
    texts = [path.read_text(encoding="utf-8") for path in examples().values()]
    return {str(tomllib.loads(text)["project"]["name"]): text for text in texts}


def demo_name() -> str:
    """Return the name of the demo's house."""
    return next(iter(_named()))


def _open_example() -> None:
    chosen = st.session_state["example"]
    if chosen:
        state.put(start_text() if chosen == _FIRST else _named()[chosen])


def _open_upload() -> None:
    file = st.session_state["upload"]
    if file is None:
        return
    try:
        state.put(file.getvalue().decode("utf-8-sig"))
    except UnicodeDecodeError:
        refused = said("{file} is not UTF-8 text; save it as UTF-8.", file=file.name)
        st.session_state["upload refused"] = refused
    else:
        st.session_state.pop("upload refused", None)
