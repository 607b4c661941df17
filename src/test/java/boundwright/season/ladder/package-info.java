/** Tests of the climb in approach steps. */
@NullMarked
package boundwright.season.ladder;

import org.jspecify.annotations.NullMarked;
