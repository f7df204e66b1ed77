"""What a field shows reaches the browser even where the run that first sent it was broken off."""

from streamlit.testing.v1 import AppTest


def script() -> None:
    import streamlit as st

    from viz.panels.fields import hold, until_it_ends

    with until_it_ends():
        hold("thickness", st.session_state.get("written", "4 in"))
        st.text_input("Thickness", key="thickness")
        if st.session_state.get("broken off"):
            st.stop()


def sent(app: AppTest) -> bool:
    return bool(app.text_input[0].proto.set_value)


def test_a_value_is_sent_with_every_run_until_one_has_ended():
    app = AppTest.from_function(script)
    app.session_state["broken off"] = True
    assert sent(app.run())
    assert sent(app.run())
    app.session_state["broken off"] = False
    assert sent(app.run())
    assert not sent(app.run())


def test_a_value_that_changes_in_a_run_that_is_broken_off_is_sent_again():
    app = AppTest.from_function(script)
    app.run()
    assert not sent(app.run())
    app.session_state["written"], app.session_state["broken off"] = "5 in", True
    assert sent(app.run())
    app.session_state["broken off"] = False
    assert sent(app.run())
    assert app.text_input[0].value == "5 in"
    assert not sent(app.run())


def test_a_field_that_is_heard_without_having_been_touched_writes_nothing():
    def hearing() -> None:
        import streamlit as st

        from viz.panels.fields import heard

        st.session_state["told"] = told = []
        for shown in ("4 in", "5 in"):
            st.session_state["thickness"] = shown
            heard("thickness", "4 in", told.append)()

    assert AppTest.from_function(hearing).run().session_state["told"] == ["5 in"]
