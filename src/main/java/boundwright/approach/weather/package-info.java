/** Wind, temperature and a wet runway as they are noted, and what is believed of each note; what they do is learned in the rooms beside it. */
@NullMarked
package boundwright.approach.weather;

import org.jspecify.annotations.NullMarked;
