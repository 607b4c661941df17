/** Films of a rep: the list, the stage with its corrections, marks on the picture, two side by side. */
@NullMarked
package boundwright.web.clips;

import org.jspecify.annotations.NullMarked;

