/**
 * Pictures drawn by the server as SVG, the same on screen and on paper. They draw what the rooms below have worked
 * out and decide nothing.
 */
@NullMarked
package boundwright.picture;

import org.jspecify.annotations.NullMarked;

