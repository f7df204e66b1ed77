"""The app opened on the demo, without a browser."""

import pytest
from streamlit.testing.v1 import AppTest

from viz.carried import app_file


@pytest.fixture
def app():
    return AppTest.from_file(str(app_file()), default_timeout=120).run()
