package boundwright.season;

import boundwright.load.account.Work;

/**
 * One line of a session.
 *
 * @param work sequence, reps of all sets together, approach steps, surface
 * @param sets how many sets the reps are done in, at least 1
 * @param inSand whether the last flight ends in sand
 */
public record Block(Work work, int sets, boolean inSand) {}
