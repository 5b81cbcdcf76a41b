package handreach.propagation.march;

import java.lang.reflect.InvocationTargetException;

/** Which arithmetic a bundle is marched with: chosen once. */
final class LaneChoice {
    private static final String MODULE = "jdk.incubator.vector";
    private static final String VECTORS = "handreach.propagation.march.VectorLanes";

    private LaneChoice() {}

    /** Started when first asked for. */
    private static final class Chosen {
        static final LaneMath MATH = choose();
    }

    static LaneMath best() {
        return Chosen.MATH;
    }

    /** Vectors where this virtual machine was started with their module and this build has their class. */
    private static LaneMath choose() {
        if (ModuleLayer.boot().findModule(MODULE).isEmpty()) return new PlainLanes();
        try {
            return (LaneMath) Class.forName(VECTORS).getDeclaredConstructor().newInstance();
        } catch (ClassNotFoundException | NoSuchMethodException | InstantiationException | IllegalAccessException e) {
            return new PlainLanes();
        } catch (InvocationTargetException | LinkageError e) {
            return new PlainLanes();
        }
    }
}
