"""Reads the text of a formula into a tree. What the tree means is `meaning`'s.

A tree is a tuple: ("num", Fraction, unit) ("yes", bool) ("pi",) ("name", n) ("member", tree, n)
("call", n, [(name, tree)])
("pt", x, y) ("neg", t) ("not", t) ("bin", sign, a, b) ("list", [t]) ("text", s).
"""
import re
import unicodedata
from fractions import Fraction

MOST_LETTERS, MOST_BRACKETS = 2000, 64
UNITS = ("mm", "cm", "m", "in", "ft", "yd", "deg")
PREFIXES = ("chart", "value", "drawing", "piece", "seam", "condition", "measure", "strip", "view", "material")
RESERVED = UNITS + PREFIXES + ("pi", "yes", "no", "and", "or", "not", "if")

UNIT = r"\s*(mm|cm|m|in|ft|yd|deg)(?!\w)|\s*(°|%)"
MIXED = re.compile(rf"([0-9]+)\s+([0-9]+)/([0-9]+)(?:{UNIT})")
RATIO = re.compile(rf"([0-9]+)/([0-9]+)(?:{UNIT})")
PLAIN = re.compile(rf"([0-9]+(?:\.[0-9]+)?)(?:{UNIT})?")
SIGNS = ("<=", ">=", "<", ">", "=", "+", "-", "*", "/", "^", "(", ")", "[", "]", ",", ":", ".")


class FormulaError(Exception):
    """The text is not a formula, or has no meaning."""


def normal(name):
    """The form in which names are compared."""
    return unicodedata.normalize("NFC", name)


def is_letter(sign, first):
    if sign == "_" or sign.isalpha():
        return True
    return not first and (sign.isnumeric() or unicodedata.category(sign).startswith("M"))


def literal(text, at):
    found = MIXED.match(text, at)
    if found:
        whole, above, below = (int(found[i]) for i in (1, 2, 3))
        unit = found[4] or found[5]
    else:
        found = RATIO.match(text, at)
        if found:
            whole, above, below = 0, int(found[1]), int(found[2])
            unit = found[3] or found[4]
        else:
            found = PLAIN.match(text, at)
            return ("num", Fraction(found[1]), found[2] or found[3]), found.end()
    if below == 0:
        raise FormulaError("a fraction over 0")
    return ("num", whole + Fraction(above, below), unit), found.end()


def tokens(text):
    out, at = [], 0
    while at < len(text):
        sign = text[at]
        if sign.isspace():
            at += 1
        elif "0" <= sign <= "9":
            tree, at = literal(text, at)
            if at < len(text) and is_letter(text[at], True) and tree[2] is None:
                raise FormulaError("letters behind a number that are no unit")
            out.append(tree)
        elif is_letter(sign, True):
            start = at
            while at < len(text) and is_letter(text[at], False):
                at += 1
            out.append(("word", text[start:at]))
        elif sign == '"':
            end = text.find('"', at + 1)
            if end < 0:
                raise FormulaError("a text that is never closed")
            out.append(("text", text[at + 1 : end]))
            at = end + 1
        else:
            found = next((s for s in SIGNS if text.startswith(s, at)), None)
            if not found:
                raise FormulaError(f"the sign {sign} has no meaning")
            out.append(("sign", found))
            at += len(found)
    return out


class Parser:
    def __init__(self, text):
        text = normal(text)
        if not text.strip():
            raise FormulaError("a formula is needed")
        if len(text) > MOST_LETTERS:
            raise FormulaError("too long")
        self.tokens, self.at, self.depth = tokens(text), 0, 0

    def peek(self, ahead=0):
        place = self.at + ahead
        return self.tokens[place] if place < len(self.tokens) else ("end",)

    def take(self, *signs):
        token = self.peek()
        if token[0] == "sign" and token[1] in signs:
            self.at += 1
            return token[1]
        return None

    def take_word(self, word):
        if self.peek() == ("word", word):
            self.at += 1
            return True
        return False

    def need(self, sign):
        if not self.take(sign):
            raise FormulaError(f"{self.peek()} stands where {sign} is needed")

    def open(self):
        self.depth += 1
        if self.depth > MOST_BRACKETS:
            raise FormulaError("too many brackets inside each other")

    def formula(self):
        tree = self.both()
        while self.take_word("or"):
            tree = ("bin", "or", tree, self.both())
        return tree

    def both(self):
        tree = self.denial()
        while self.take_word("and"):
            tree = ("bin", "and", tree, self.denial())
        return tree

    def denial(self):
        count = 0
        while self.take_word("not"):
            count += 1
        tree = self.comparison()
        for _ in range(count):
            tree = ("not", tree)
        return tree

    def comparison(self):
        tree = self.sum()
        sign = self.take("<", "<=", ">", ">=")
        return ("bin", sign, tree, self.sum()) if sign else tree

    def sum(self):
        tree = self.product()
        while sign := self.take("+", "-"):
            tree = ("bin", sign, tree, self.product())
        return tree

    def product(self):
        tree = self.signed()
        while sign := self.take("*", "/"):
            tree = ("bin", sign, tree, self.signed())
        return tree

    def signed(self):
        count = 0
        while self.take("-"):
            count += 1
        tree = self.postfix()
        if self.take("^"):
            tree = ("bin", "^", tree, self.signed())
        for _ in range(count):
            tree = ("neg", tree)
        return tree

    def postfix(self):
        tree = self.primary()
        while self.take("."):
            token = self.peek()
            if token[0] != "word":
                raise FormulaError("a name is needed behind the point")
            self.at += 1
            if self.peek() == ("sign", "("):
                tree = ("call", token[1], [(None, tree)] + self.arguments())
            else:
                tree = ("member", tree, token[1])
        return tree

    def primary(self):
        token = self.peek()
        self.at += 1
        if token[0] == "num":
            return token
        if token == ("sign", "("):
            self.open()
            tree = self.formula()
            if self.take(","):
                tree = ("pt", tree, self.formula())
            self.need(")")
            self.depth -= 1
            return tree
        if token[0] == "word":
            word = token[1]
            if word in ("yes", "no"):
                return ("yes", word == "yes")
            if word == "pi":
                return ("pi",)
            if self.peek() == ("sign", "("):
                return ("call", word, self.arguments())
            if word in PREFIXES or word not in RESERVED:
                return ("name", word)
        raise FormulaError(f"{token} cannot stand here")

    def arguments(self):
        self.need("(")
        self.open()
        out = []
        if not self.take(")"):
            while True:
                out.append(self.argument())
                if self.take(")"):
                    break
                self.need(",")
        self.depth -= 1
        return out

    def argument(self):
        name, token = None, self.peek()
        if token[0] == "word" and self.peek(1) == ("sign", ":"):
            name, self.at = token[1], self.at + 2
        token = self.peek()
        if token[0] == "text":
            self.at += 1
            return name, token
        if self.take("["):
            self.open()
            items = [self.formula()]
            while self.take(","):
                items.append(self.formula())
            self.need("]")
            self.depth -= 1
            return name, ("list", items)
        return name, self.formula()

    def end(self):
        if self.at < len(self.tokens):
            raise FormulaError(f"{self.peek()} stands behind the end")


def parse(text):
    """The tree of a formula."""
    parser = Parser(text)
    tree = parser.formula()
    parser.end()
    return tree


def parse_condition(text):
    """The tree of what must hold: ("=", left, right), or a formula that gives yes-or-no."""
    parser = Parser(text)
    tree = parser.formula()
    if parser.take("="):
        tree = ("=", tree, parser.formula())
    parser.end()
    return tree
