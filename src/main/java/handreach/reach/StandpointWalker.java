package handreach.reach;

import handreach.propagation.Terminals;

/** Walks with the stretched string that all models share, and one of them on top. */
final class StandpointWalker implements RadialWalker {
    private final Standpoint at;
    private final RadialModel model;

    StandpointWalker(Terminals terminals, double earthKm, RadialModel model) {
        this.at = new Standpoint(terminals, earthKm);
        this.model = model;
    }

    @Override
    public void start(Ray ray) {
        at.start(ray);
        model.start(at);
    }

    @Override
    public void advanceTo(double distanceKm) {
        at.advanceTo(distanceKm);
    }

    @Override
    public void stand(double distanceKm, double groundM, int coverOrdinal) {
        at.stand(distanceKm, groundM, coverOrdinal);
    }

    @Override
    public double lossDb() {
        return model.lossDb(at);
    }

    @Override
    public double departureDeg() {
        return at.departureDeg();
    }

    @Override
    public double arrivalDeg() {
        return at.arrivalDeg();
    }

    @Override
    public boolean isInSight() {
        return at.isInSight();
    }
}
