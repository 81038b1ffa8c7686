"""How circles of sets are measured: what regions there are is found by ``venn_diagram_measured``."""
