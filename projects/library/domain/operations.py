"""What each operation asks of the lathe, the tailstock and the hands."""

from __future__ import annotations

from collections.abc import Mapping

from projects.library.domain.words import Operation, Stage, Tool

# For what the speed may be chosen; operations that aren't here are done with the lathe stopped.
STAGES: Mapping[Operation, frozenset[Stage]] = {
    Operation.ROUGHING: frozenset({Stage.START, Stage.ROUGH}),
    Operation.SIZING: frozenset({Stage.ROUGH, Stage.SHAPE}),
    Operation.SHAPING: frozenset({Stage.SHAPE}),
    Operation.FACING: frozenset({Stage.ROUGH, Stage.SHAPE}),
    Operation.HOLLOWING: frozenset({Stage.ROUGH, Stage.SHAPE}),
    Operation.PARTING_OFF: frozenset({Stage.ROUGH, Stage.SHAPE}),
    Operation.DRILLING: frozenset({Stage.DRILL}),
    Operation.FRICTION_BURNING: frozenset({Stage.BURN}),
    Operation.SANDING: frozenset({Stage.SAND}),
    Operation.POLISHING: frozenset({Stage.POLISH}),
}
# A pencil line is drawn on running work.
MAY_RUN = frozenset({*STAGES, Operation.MARKING})
# Nothing of these can be done while a centre stands in the way: tailstock up as long as it can be.
NEED_FREE_END = frozenset(
    {Operation.FACING, Operation.HOLLOWING, Operation.DRILLING, Operation.PARTING_OFF, Operation.TRIMMING}
)
# Done with the tool rest out of the way.
WITHOUT_REST = frozenset({Operation.SANDING, Operation.POLISHING, Operation.FINISHING})
CUTTING_TOOLS = frozenset(
    {
        Tool.SPINDLE_ROUGHING_GOUGE,
        Tool.SPINDLE_GOUGE,
        Tool.BOWL_GOUGE,
        Tool.SKEW,
        Tool.SCRAPER,
        Tool.PARTING_TOOL,
    }
)
# Cutting on the lathe, which rules call turning.
TURNING = frozenset(
    {
        Operation.ROUGHING,
        Operation.SIZING,
        Operation.SHAPING,
        Operation.FACING,
        Operation.HOLLOWING,
        Operation.PARTING_OFF,
    }
)
