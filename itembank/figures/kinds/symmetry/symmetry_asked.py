"""How questions about symmetry begin, whatever kind of figure they are about."""

PATTERN = r"(?:the|this) (?:pattern|shaded pattern)"
LINES = r"how many lines of (?:reflection )?symmetry does"
ORDER = (
    r"(?:what is|write down|find|give) (?:the )?order of rotational symmetry of|"
    r"what order of rotational symmetry (?:does|has)"
)
