### Everything else in the window.
