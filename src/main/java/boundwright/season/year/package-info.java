/**
 * One athlete's season as numbers: what may be done on each day ({@link boundwright.season.year.Choices}, filtered by the guard itself), the
 * rules ({@link boundwright.season.year.YearRules}, one rule a method) and a line of chosen days that knows its score after every change.
 */
@NullMarked
package boundwright.season.year;

import org.jspecify.annotations.NullMarked;
