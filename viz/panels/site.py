"""The page "On site": pages one carries to the hole, and the dug ground against the design."""

from typing import Literal, get_args

import streamlit as st

from geometry.errors import BedcourseError
from viz.job import Job
from viz.language.reader import codes, language
from viz.panels import handed, shown, spoken
from viz.panels.asdug import as_dug
from viz.panels.papers import paper_choice
from viz.panels.spoken import later, said

Stage = Literal["Crew cards", "Story pole", "Laser sheet", "Inspection sheet", "As dug"]
_KEY, _CODE, _PAGE = "site stage", "page language", "page"
_CAUTIONS = later({
    "Crew cards": "A card tells one stage of this design and nothing else. Whoever runs the job "
    "reads the drawings, looks at the ground and says stop.",
    "Story pole": "Print at full size, 100 %, and lay a tape on the two bars of every page before "
    "you cut a pole by it: a printer that fits pages to paper spoils it.",
    "Laser sheet": "Shoot the benchmark before and after. A laser that was knocked or moved reads "
    "wrong everywhere, and nothing else will tell.",
    "Inspection sheet": "The department's own list and its inspector decide what may be covered; "
    "this list only reminds you.",
})  # fmt: skip


def on_site(work: Job) -> None:
    """Show one thing of use at the hole: pages to print, or a survey."""
    chosen = shown.stage_choice(get_args(Stage), _KEY)
    if chosen in _CAUTIONS:
        _handed(work, chosen)
        shown.caution(_CAUTIONS[chosen])
    else:
        as_dug(work)


def _handed(work: Job, stage: str) -> None:
    """Show pages to print, one at a time, in a language and on a paper."""
    with st.container(horizontal=True, vertical_alignment="bottom"):
        code = st.segmented_control(
            said("Language"), codes(), format_func=lambda c: language(c).name, default=_first(),
            key=_CODE, required=True,
        )  # fmt: skip
        paper = paper_choice(work)
    pages(work, handed.Sought(stage.lower(), paper, code or _first()))


def _first() -> str:
    """Return the pages' language at first: the app's, where crews' pages speak it."""
    return spoken.code() if spoken.code() in codes() else codes()[0]


def pages(work: Job, sought: handed.Sought) -> None:
    """Show pages one at a time, with their files."""
    try:
        made = handed.pages(work.text, sought)
    except BedcourseError as error:
        shown.say(error)
        return
    key = f"{_PAGE} of {sought.kind}"
    places = range(len(made))
    if st.session_state.get(key, 0) not in places:
        st.session_state[key] = 0
    place = 0
    if len(made) > 1:
        place = st.selectbox(
            said("Page"), places, format_func=lambda n: made[n].drawing.title, key=key
        )
    svg = handed.page_svg(work.text, sought, place)
    shown.page(svg, made[place].drawing.title)
    name = sought.kind.replace(" ", "-")
    with st.container(horizontal=True, vertical_alignment="center"):
        shown.large_toggle()
        pdf = "PDF" if len(made) == 1 else said("PDF, all {count} pages", count=len(made))
        shown.save_button(
            pdf, lambda: handed.pages_pdf(work.text, sought), f"{name}.pdf", "application/pdf"
        )
        shown.save_drawing(svg, f"{name}-{place + 1}")
