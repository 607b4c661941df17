/** The weeks of a season: how much is wanted of each athlete in each week, and how many sessions of which kind. */
@NullMarked
package boundwright.season.weeks;

import org.jspecify.annotations.NullMarked;
