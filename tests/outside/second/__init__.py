"""A second reader and evaluator of drafts, written from the reference of the language and the list of types alone.

It shares no code with the engine, so that each can be the judge of the other.
"""
