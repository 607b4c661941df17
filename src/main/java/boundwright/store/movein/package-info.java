/**
 * A coach's own spreadsheet: what it is written in, which column is what, what each row becomes, and taking it whole or not at all. Nothing is
 * guessed in silence: what was recognised is named and can be changed, and a day that can be read in two ways is asked.
 */
@NullMarked
package boundwright.store.movein;

import org.jspecify.annotations.NullMarked;
