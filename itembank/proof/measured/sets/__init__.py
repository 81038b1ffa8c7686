"""How circles of sets are measured: ``venn_diagram_measured`` finds the regions for both kinds."""
