package handreach.reach;

/** What all engines derive from a request before they start: the plane round the source and the effective earth. */
final class AreaSetting {
    private final AreaRequest request;
    private final AreaGround ground;
    private final AzimuthalFrame frame;

    AreaSetting(AreaRequest request, AreaGround ground) {
        this.request = request;
        this.ground = ground;
        this.frame = new AzimuthalFrame(request.source(), Math.max(request.radiusM(), 2 * CellsByRadial.NEAREST_M));
    }

    AreaRequest request() {
        return request;
    }

    AreaGround ground() {
        return ground;
    }

    AzimuthalFrame frame() {
        return frame;
    }

    double earthKm() {
        return request.conditions().atmosphere().effectiveRadiusKm();
    }

    RaySampler sampler() {
        return new RaySampler(frame, ground, earthKm());
    }
}
