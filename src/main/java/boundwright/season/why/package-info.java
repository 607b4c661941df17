/** Why a day is as it is, and which rule stands against a wish, with what giving way would cost in units that a coach can weigh. */
@NullMarked
package boundwright.season.why;

import org.jspecify.annotations.NullMarked;
