/** Judges a plan day by day with the guard itself, whatever made it: nothing that the guard refuses is ever published. */
@NullMarked
package boundwright.season.check;

import org.jspecify.annotations.NullMarked;
