"""The app: `bedcourse app`, or `streamlit run app.py`."""

import streamlit as st

from viz.panels.icon import icon
from viz.panels.page import page
from viz.panels.spoken import escaped

st.set_page_config(page_title="Bedcourse", page_icon=icon(), layout="wide")

try:
    page()
except Exception as error:  # the last door before the user
    st.error(
        "Something unexpected went wrong; please report it with your design file: "
        f"{type(error).__name__} {escaped(str(error))}"
    )
