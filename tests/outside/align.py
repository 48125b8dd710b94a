"""Whether a reader's text is exactly the expected words in order, with nothing else but what the
theme prints.

The text is cut at white space. Each token must be one expected word, whole, with nothing but theme
fragments (a comma, a bracket, a caption) on either side of it; or fragments alone; or a bullet sign
where a bullet stands. Every way to read the tokens so far is kept, so the answer does not depend on a
guess: if the words can be read out of the text at all, they are.
"""

import dataclasses
import difflib

from expected_words import normalise


@dataclasses.dataclass
class Alignment:
    complete: bool
    found: int  # expected words read, of `expected`
    expected: int
    fault: str  # the first mismatch in its surroundings

    def percent(self):
        return 100 * self.found / self.expected if self.expected else 0.0


@dataclasses.dataclass(frozen=True)
class State:
    word: int = 0  # next expected word
    heads: int = 0  # running heads read
    in_head: int = 0  # next word of the running head, 0 outside of one


class Aligner:
    def __init__(self, words, theme, heads=(), titles=(), continued=""):
        """words: of expected_words; heads: the word lists of the running heads, one a page; titles:
        the places of sections' titles. Where a section goes on after a running head, its title must
        come again there, with the word `continued`."""
        self.words = words
        self.again = list(self.titles_again(set(titles), continued))
        self.fragments = sorted(theme.fragments, key=len, reverse=True)
        self.signs = theme.signs
        self.heads = heads

    def align(self, text):
        tokens = normalise(text.replace("\f", " ")).split()
        states = {State()}
        for position, token in enumerate(tokens):
            following = {after for state in states for after in self.steps(state, token)}
            if not following:
                return self.failed(tokens, position, states)
            states = following
        end = State(len(self.words), len(self.heads), 0)
        if end in states:
            return Alignment(True, self.count(), self.count(), "")
        return self.failed(tokens, len(tokens), states)

    def titles_again(self, places, continued):
        """Of each word, what a page opens with that begins with it; and of the end."""
        title, place = [], None
        for word in self.words:
            if word.place in places:
                title = [*title, word.text] if word.place == place else [word.text]
                yield []
            else:
                yield [*title, continued] if title else []
            place = word.place
        yield []

    # --- one token

    def steps(self, state, token):
        return self.read(state, token, may_start=True)

    def read(self, state, rest, may_start):
        """States after `rest`; a word may start only at the token's start or after a fragment."""
        if not rest:
            return {state}
        states = set()
        for fragment in self.fragments:
            if rest.startswith(fragment):
                states |= self.read(state, rest[len(fragment):], True)
        if may_start:
            for text, after in self.next_words(state):
                if rest.startswith(text):
                    states |= self.read(after, rest[len(text):], False)
        if rest in self.signs and state.word < len(self.words) \
                and self.words[state.word].kind == "bullet" and not state.in_head:
            states.add(dataclasses.replace(state, word=state.word + 1))
        return states

    def next_words(self, state):
        if not state.in_head and state.word < len(self.words):
            word = self.words[state.word]
            if word.kind == "word":
                yield word.text, dataclasses.replace(state, word=state.word + 1)
        if state.heads < len(self.heads):
            head = self.heads[state.heads] + self.again[state.word]
            last = state.in_head + 1 == len(head)
            yield head[state.in_head], State(state.word, state.heads + last,
                                             0 if last else state.in_head + 1)

    # --- what to say of a failure

    def count(self):
        return sum(word.kind == "word" for word in self.words)

    def failed(self, tokens, position, states):
        furthest = max(states, key=lambda state: state.word)
        expected = self.words[furthest.word: furthest.word + 6]
        place = expected[0].place if expected else "the end"
        fault = (f"at {place}: expected '{' '.join(w.text or '(bullet)' for w in expected) or '(end)'}'"
                 f" after '{' '.join(tokens[max(0, position - 6): position])}'"
                 f", read '{' '.join(tokens[position: position + 6]) or '(end)'}'")
        return Alignment(False, self.found_anywhere(tokens), self.count(), fault)

    def found_anywhere(self, tokens):
        """Words read in order when mismatches are passed over, so that one slip costs one word."""
        edge = "".join(self.fragments)
        core = [word.text.strip(edge) for word in self.words if word.kind == "word"]
        read = [token.strip(edge) for token in tokens]
        matcher = difflib.SequenceMatcher(None, core, read, autojunk=False)
        found = sum(block.size for block in matcher.get_matching_blocks())
        return min(found, self.count() - 1)
