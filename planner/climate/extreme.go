package climate

type extreme struct{}
