/**
 * An invented squad at an invented place, to try things on. Nobody in it is a real person.
 */
@NullMarked
package boundwright.demo;

import org.jspecify.annotations.NullMarked;

