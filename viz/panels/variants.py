"""Variants of a design: kept in the visit, opened again, and held against the design as it stands.

Nothing is computed here: the comparison is geometry's, its words and tables are viz's.
"""

import json
from collections.abc import Callable
from dataclasses import dataclass, replace

import streamlit as st

from geometry.designfile import read_design
from geometry.errors import BedcourseError
from geometry.variants.compare import MOST, Comparison, compare
from geometry.variants.edges import edge_texts
from viz.export.csvfile import to_csv
from viz.export.xlsxfile import to_xlsx
from viz.job import Job
from viz.panels import shown, state
from viz.panels.cached import sound_job
from viz.panels.pairs import Picture, picture, show
from viz.panels.shared import shared
from viz.panels.spoken import Told, escaped, in_english, later, said
from viz.variants import variant_tables, variant_words
from viz.variants.variant_pictures import variant_of, variants_pictures

MOST_KEPT = 4
_KEPT, _NUMBER, _REFUSED = "variants kept", "variants counted", "variant refused"
_NAME, _FILE, _WITH = "variant name", "variant file", "variants compared"
_CURRENT = "as it stands"
_FULL = later("As many are kept as can be; take one out first.")
_CAUTION = later(
    "A comparison says what differs, not which design is right. "
    "The local code and the building department decide."
)


@dataclass(frozen=True)
class Kept:
    """A design file kept under a name; the number is its own for the whole visit."""

    number: int
    name: str
    text: str


def variants(work: Job) -> None:
    """Keep, open, rename and take out variants, and compare the design with them."""
    _keeping(work)
    kept = _kept()
    if not kept:
        st.info(said("Keep the design as a variant, change it, and see here what the change does."))
        return
    for one in kept:
        _row(one)
    _compared(work, kept)


def _kept() -> tuple[Kept, ...]:
    found: tuple[Kept, ...] = st.session_state.get(_KEPT, ())
    return found


def listed() -> str:
    """Return the kept variants as text, to be taken up again by `take_up`."""
    return json.dumps([[one.name, one.text] for one in _kept()])


def take_up(words: str) -> None:
    """Keep the variants of a list that `listed` gave; what is no such list is left alone."""
    try:
        rows = json.loads(words)
    except ValueError:
        return
    for row in rows if isinstance(rows, list) else ():
        match row:
            case [str(name), str(text)]:
                _keep(name, text)


def _keeping(work: Job) -> None:
    full = len(_kept()) >= MOST_KEPT
    with st.container(horizontal=True, vertical_alignment="bottom"):
        st.text_input(said("Name of the variant"), key=_NAME, max_chars=60, disabled=full)
        st.button(
            said("Keep this as a variant"), on_click=_keep_current, args=(work,), disabled=full,
            icon=":material/bookmark_add:",
        )  # fmt: skip
        st.button(
            said("Add the ways to make the edge"), on_click=_keep_edges, args=(work,),
            disabled=full,
            help=said("The other ways in which floor, foam and footing can meet, each as a "
                      "variant"),
        )  # fmt: skip
    st.file_uploader(
        said("Add a design file as a variant"), type=["toml"], key=_FILE, on_change=_keep_file,
        max_upload_size=1, disabled=full,
    )  # fmt: skip
    if full:
        st.caption(said(_FULL))
    if refused := st.session_state.get(_REFUSED):
        st.warning(escaped(refused))


def _keep(name: str, text: str) -> None:
    """Keep one more, under a name no other has; nothing where as many are kept as can be."""
    kept = _kept()
    if len(kept) < MOST_KEPT:
        number = st.session_state.get(_NUMBER, 0) + 1
        st.session_state[_NUMBER] = number
        own = variant_tables.named_apart([_CURRENT, *(one.name for one in kept), name])[-1]
        st.session_state[_KEPT] = (*kept, Kept(number, own, text))
        held = list(st.session_state.get(_WITH) or ())
        st.session_state[_WITH] = [*held, number][: MOST - 1]
    st.session_state.pop(_REFUSED, None)


def _keep_current(work: Job) -> None:
    name = str(st.session_state.get(_NAME, "")).strip()
    _keep(name or work.name, work.text)
    st.session_state[_NAME] = ""


def _keep_edges(work: Job) -> None:
    found = edge_texts(work.text)
    for title, text in found:
        _keep(title, text)
    if not found:
        st.session_state[_REFUSED] = said(
            "This floor has no foam under a slab, and so no other edge."
        )


def _keep_file() -> None:
    file = st.session_state[_FILE]
    if file is None:
        return
    try:
        text = file.getvalue().decode("utf-8-sig")
        read_design(text)
    except UnicodeDecodeError:
        st.session_state[_REFUSED] = said(
            "{file} is not UTF-8 text; save it as UTF-8.", file=file.name
        )
    except BedcourseError as error:
        st.session_state[_REFUSED] = said(
            "{file} is not kept: {error}", file=file.name, error=error
        )
    else:
        _keep(file.name.removesuffix(".toml"), text)


def _row(one: Kept) -> None:
    key = f"variant {one.number}"
    st.session_state[f"{key} name"] = one.name
    with st.container(horizontal=True, vertical_alignment="bottom", key=key):
        st.text_input(
            said("Variant"), key=f"{key} name", max_chars=60, on_change=_rename, args=(one,),
        )  # fmt: skip
        st.button(said("Open"), key=f"{key} open", on_click=state.put, args=(one.text,))
        st.button(said("Take out"), key=f"{key} out", on_click=_take_out, args=(one,))
        st.download_button(
            said("Save"), one.text, f"{_file_name(one.name)}.toml", "application/toml",
            key=f"{key} save", on_click="ignore", icon=":material/download:",
        )  # fmt: skip


def _file_name(name: str) -> str:
    return "".join(c if c.isalnum() or c in " -_" else "-" for c in name).strip() or "variant"


def _rename(one: Kept) -> None:
    name = str(st.session_state[f"variant {one.number} name"]).strip() or one.name
    others = [_CURRENT, *(k.name for k in _kept() if k.number != one.number)]
    own = variant_tables.named_apart([*others, name])[-1]
    _change(lambda k: replace(k, name=own) if k.number == one.number else k)


def _take_out(one: Kept) -> None:
    _change(lambda k: None if k.number == one.number else k)


def _change(how: Callable[[Kept], Kept | None]) -> None:
    changed = (how(one) for one in _kept())
    st.session_state[_KEPT] = tuple(one for one in changed if one)


def _compared(work: Job, kept: tuple[Kept, ...]) -> None:
    """Show the design as it stands beside the chosen variants: in short, pictures, tables."""
    by_number = {one.number: one for one in kept}
    before = st.session_state.get(_WITH)
    usual = [one.number for one in kept][: MOST - 1]
    held = [n for n in before if n in by_number] if before else []
    st.session_state[_WITH] = held or usual
    chosen = st.multiselect(
        said("Compare the design as it stands with"), list(by_number), key=_WITH,
        format_func=lambda n: by_number[n].name if n in by_number else str(n),
        max_selections=MOST - 1,
    )  # fmt: skip
    if not chosen:
        return
    beside = [by_number[n] for n in chosen]
    texts = (work.text, *(one.text for one in beside))
    names = (_CURRENT, *(one.name for one in beside))
    found = _found(texts, names)
    in_english("What differs is told in English.")
    shown.lines("In short", variant_words.summary(found, work.system))
    if found.same:
        return
    _pictured(texts, names)
    for title, table in variant_tables.tables(found, work.system):
        st.subheader(said(title))
        shown.rows(table)
    shown.caution(_CAUTION)
    with st.container(horizontal=True):
        book = variant_tables.workbook(found, work.system)
        figures = to_csv(variant_tables.figures(found))
        shown.save_button("CSV", figures, "variants.csv", "text/csv")
        shown.save_button("XLSX", lambda: to_xlsx(book), "variants.xlsx", shown.XLSX)


def _pictured(texts: tuple[str, ...], names: tuple[str, ...]) -> None:
    drawn = _picture(texts, names)
    if isinstance(drawn, str):
        st.warning(escaped(drawn))
        return
    show(drawn)
    with st.container(horizontal=True):
        shown.save_drawing(drawn.wide, drawn.name)


@shared(6, Told("Comparing the designs ..."))
def _found(texts: tuple[str, ...], names: tuple[str, ...]) -> Comparison:
    jobs = zip(names, map(sound_job, texts), strict=True)
    return compare([variant_of(name, work) for name, work in jobs])


@shared(6, Told("Drawing the designs side by side ..."))
def _picture(texts: tuple[str, ...], names: tuple[str, ...]) -> Picture | str:
    try:
        return picture(*variants_pictures([sound_job(text) for text in texts], names))
    except BedcourseError as error:
        return str(error)
