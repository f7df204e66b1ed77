"""Going from page to page of the app."""


def on(app, page, stage=None):
    """Go to a page, and to one of its stages."""
    app.segmented_control(key="view").set_value(page).run()
    if stage:
        app.segmented_control(key=f"{page.lower()} stage").set_value(stage).run()
    return app


def put(app, text, page="Layout", stage=None):
    """Put a whole design file in the place of the one that is open, then go to a page."""
    on(app, "Set", "Design file").text_area(key="whole text").set_value(text).run()
    return on(app, page, stage)
