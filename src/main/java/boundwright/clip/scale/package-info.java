/** From pixels to metres: marks on the ground, the upright plane the athlete runs in, and what being off that plane costs. */
@NullMarked
package boundwright.clip.scale;

import org.jspecify.annotations.NullMarked;

