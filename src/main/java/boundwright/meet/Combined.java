package boundwright.meet;

import boundwright.jump.CombinedTable;

/**
 * The combined event that a long jump is part of. Everybody has the same number of attempts and nobody is left out; who is ahead of
 * whom goes by the points of the best mark (common practice).
 *
 * @param table its points
 * @param wind by which rule the wind counts
 */
public record Combined(CombinedTable table, CombinedWind wind) {}
