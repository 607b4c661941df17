/** What growth is held against from outside. */
@NullMarked
package boundwright.athlete.growth;

import org.jspecify.annotations.NullMarked;
