/** Checks of the room of the same name against figures from outside the project. */
@NullMarked
package boundwright.clip.track;

import org.jspecify.annotations.NullMarked;

